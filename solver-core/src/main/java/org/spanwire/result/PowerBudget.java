package org.spanwire.result;

import java.util.OptionalDouble;

/**
 * Where the power goes, in watts for the feed voltages stated in the antenna.
 *
 * @param accepted power delivered by all feeds, Re Σ V·I*
 * @param radiated power leaving for the sky (all directions without a ground), integrated from the
 *     far field
 * @param conductorLoss heat in the wires and their insulation
 * @param fittingLoss heat in the fittings
 * @param soilAbsorbed power absorbed by the soil, computed on its own from the transmitted field;
 *     empty without soil or if not asked for
 */
public record PowerBudget(
    double accepted,
    double radiated,
    double conductorLoss,
    double fittingLoss,
    OptionalDouble soilAbsorbed) {}
