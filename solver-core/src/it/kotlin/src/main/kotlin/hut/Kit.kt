package hut

import java.util.concurrent.CompletableFuture
import org.apache.commons.math3.complex.Complex
import org.spanwire.Antenna
import org.spanwire.Solver
import org.spanwire.SolverOptions
import org.spanwire.Watch
import org.spanwire.geometry.Point
import org.spanwire.geometry.Position
import org.spanwire.medium.Conductor
import org.spanwire.medium.Materials
import org.spanwire.medium.PerfectGround

/** A wire over wet rock, solved at several frequencies at once until somebody calls it off. */
class Kit(private val stopped: () -> Boolean = { false }) {

  private val antenna: Antenna =
      Antenna.builder()
          .wire(
              "radiator",
              Conductor.bare(Materials.COPPER, 1e-3),
              Point(0.0, 0.0, 9.0),
              Point(20.2, 0.0, 9.0))
          .feed("main", "radiator", Position.fraction(0.5))
          .ground(PerfectGround.INSTANCE)
          .build()

  private val solver =
      Solver(
          SolverOptions(1e-3),
          object : Watch {
            override fun cancelled() = stopped()
          })

  /** Impedances in ohms at frequencies in hertz. */
  fun impedances(vararg frequenciesHz: Double): List<Complex> =
      frequenciesHz
          .map { CompletableFuture.supplyAsync { solver.solve(antenna, it) } }
          .map { it.join().impedance() }
}
