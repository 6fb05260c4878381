package hut

import java.util.concurrent.CancellationException
import java.util.concurrent.CompletionException
import org.junit.jupiter.api.Assertions.assertEquals
import org.junit.jupiter.api.Assertions.assertThrows
import org.junit.jupiter.api.Assertions.assertTrue
import org.junit.jupiter.api.Test
import org.spanwire.Antenna
import org.spanwire.Solver
import org.spanwire.design.DesignException
import org.spanwire.design.DesignReader
import org.spanwire.geometry.GeometryException

class KitTest {

  @Test
  fun solvesAtOnce() {
    val (below, at) = Kit().impedances(6.5e6, 7.25e6)
    // A dipole is capacitive below its resonance, which lies near 7.1 MHz for 20.2 m.
    assertTrue(below.imaginary < -50.0)
    assertTrue(at.imaginary > below.imaginary)
  }

  @Test
  fun isCalledOff() {
    val failure =
        assertThrows(CompletionException::class.java) { Kit { true }.impedances(7.1e6) }
    assertTrue(failure.cause is CancellationException)
  }

  @Test
  fun exceptionsTellThePlace() {
    val bad = assertThrows(DesignException::class.java) { DesignReader.read("title: x\nwire: 1", "kit.yaml") }
    assertEquals("kit.yaml", bad.file())
    assertTrue(bad.line() > 0)
    val empty =
        assertThrows(GeometryException::class.java) { Solver().solve(Antenna.builder().build(), 7e6) }
    assertEquals(GeometryException.Subject.ANTENNA, empty.subject())
  }
}
