/**
 * Wire antennas over real ground: designs, solver, circuits and studies.
 *
 * <p>Only the exported packages are API; everything under {@code org.spanwire.internal} may change
 * at any time.
 */
module org.spanwire {
  exports org.spanwire;
  exports org.spanwire.circuit;
  exports org.spanwire.circuit.bench;
  exports org.spanwire.design;
  exports org.spanwire.geometry;
  exports org.spanwire.medium;
  exports org.spanwire.practice;
  exports org.spanwire.result;
  exports org.spanwire.study;
  exports org.spanwire.unit;

  // Complex numbers in the API are those of commons-math3.
  requires transitive commons.math3;
  requires ejml.core;
  requires ejml.zdense;
  requires org.snakeyaml.engine;
}
