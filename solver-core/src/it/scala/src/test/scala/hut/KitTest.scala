package hut

import java.util.concurrent.{CancellationException, CompletionException}
import org.junit.jupiter.api.Assertions.{assertEquals, assertThrows, assertTrue}
import org.junit.jupiter.api.Test
import org.spanwire.{Antenna, Solver}
import org.spanwire.design.{DesignException, DesignReader}
import org.spanwire.geometry.GeometryException

class KitTest:

  @Test def solvesAtOnce(): Unit =
    val found = Kit().impedances(6.5e6, 7.25e6)
    // A dipole is capacitive below its resonance, which lies near 7.1 MHz for 20.2 m.
    assertTrue(found(0).getImaginary < -50)
    assertTrue(found(1).getImaginary > found(0).getImaginary)

  @Test def isCalledOff(): Unit =
    val failure = assertThrows(classOf[CompletionException], () => { Kit(true).impedances(7.1e6); () })
    assertTrue(failure.getCause.isInstanceOf[CancellationException])

  @Test def exceptionsTellThePlace(): Unit =
    val bad = assertThrows(
      classOf[DesignException],
      () => { DesignReader.read("title: x\nwire: 1", "kit.yaml"); () }
    )
    assertEquals("kit.yaml", bad.file)
    assertTrue(bad.line > 0)
    val empty = assertThrows(
      classOf[GeometryException],
      () => { Solver().solve(Antenna.builder().build(), 7e6); () }
    )
    assertEquals(GeometryException.Subject.ANTENNA, empty.subject)
