package hut;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.DesignReader;

class KitTest {

  @Test
  void solves() {
    Complex z = Kit.impedance(7.1e6);
    // A resonant dipole at a quarter of a wavelength: the textbooks' 60 to 90 ohm, little reactance.
    assertEquals(75, z.getReal(), 15);
    assertEquals(0, z.getImaginary(), 40);
  }

  @Test
  void readsDesignsWithTheResourcesOfTheLibrary() {
    String text =
        """
        format: spanwire-design/1
        title: Hut kit
        conductors: {strand: {material: copper, diameter: 2 mm}}
        wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}}
        feeds: {main: {wire: radiator, at: 50 %}}
        ground: perfect
        bands: {plan: iaru-region-1, use: [40 m]}
        """;
    Design design = DesignReader.read(text, "kit.yaml");
    assertEquals(7e6, design.bands().get(0).lowHz());
    assertThrows(DesignException.class, () -> DesignReader.read("title: x", "kit.yaml"));
  }

  @Test
  void runsAsItIsMeantTo() {
    assertTrue(Antenna.class.getModule().isNamed());
  }
}
