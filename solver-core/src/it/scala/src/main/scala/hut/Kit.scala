package hut

import java.util.concurrent.CompletableFuture
import org.apache.commons.math3.complex.Complex
import org.spanwire.{Antenna, Solver, SolverOptions, Watch}
import org.spanwire.geometry.{Point, Position}
import org.spanwire.medium.{Conductor, Materials, PerfectGround}

/** A wire over wet rock, solved at several frequencies at once until somebody calls it off. */
class Kit(stopped: => Boolean = false):

  private val antenna = Antenna.builder()
    .wire("radiator", Conductor.bare(Materials.COPPER, 1e-3), Point(0, 0, 9), Point(20.2, 0, 9))
    .feed("main", "radiator", Position.fraction(0.5))
    .ground(PerfectGround.INSTANCE)
    .build()

  private val solver = Solver(
    SolverOptions(1e-3),
    new Watch:
      override def cancelled(): Boolean = stopped
  )

  /** Impedances in ohms at frequencies in hertz. */
  def impedances(frequenciesHz: Double*): Seq[Complex] =
    frequenciesHz
      .map(f => CompletableFuture.supplyAsync(() => solver.solve(antenna, f)))
      .map(_.join().impedance())
