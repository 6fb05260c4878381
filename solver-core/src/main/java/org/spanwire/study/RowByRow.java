package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;

/** Shares nothing between rows. */
record RowByRow(Solver solver) implements SweepPlan {

  @Override
  public int blockRows(Sweep sweep) {
    return 1;
  }

  @Override
  public long solves(Sweep sweep, RowRange rows) {
    return rows.count();
  }

  @Override
  public List<SweepRow> solve(Sweep sweep, RowRange rows) {
    List<SweepRow> solved = new ArrayList<>();
    for (long row = rows.first(); row < rows.end(); row++) {
      solved.add(solve(sweep, row));
    }
    return solved;
  }

  SweepRow solve(Sweep sweep, long row) {
    double frequency = sweep.frequencyHz(row);
    try {
      Design design = sweep.design(row);
      try {
        Operation operation = Installation.of(design).solve(solver, frequency);
        List<Double> values = sweep.request().values(operation);
        return new SweepRow(sweep.parameters(row), frequency, values, Optional.empty());
      } catch (GeometryException e) {
        return failed(sweep, row, SweepRow.Kind.GEOMETRY, design.locate(e));
      }
    } catch (CircuitException e) {
      return failed(sweep, row, SweepRow.Kind.FEED_CHAIN, e);
    } catch (DesignException e) {
      return failed(sweep, row, SweepRow.Kind.DESIGN, e);
    } catch (ToleranceException e) {
      return failed(sweep, row, SweepRow.Kind.TOLERANCE, e);
    }
  }

  private static SweepRow failed(Sweep sweep, long row, SweepRow.Kind kind, Exception cause) {
    return new SweepRow(
        sweep.parameters(row),
        sweep.frequencyHz(row),
        List.of(),
        Optional.of(new SweepRow.Failure(kind, cause.getMessage())));
  }
}
