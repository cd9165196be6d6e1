package coldround.refrigerant;

import coldround.reason.Source;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One refrigerant of scoring/refrigerants.csv.
 *
 * @param designation as in ASHRAE 34, such as R-404A
 * @param family CFC, HCFC, HFC, HFO-HFC blend, HFO, HC or inorganic
 * @param zeotropeClass pure, zeotrope or azeotrope
 * @param composition percent by mass of each constituent, adding up to 100
 * @param safetyGroup ASHRAE 34, such as A1, A2L or B2L
 * @param odp ozone depletion potential, Montreal Protocol values
 * @param gwpAr4 global warming potential over 100 years, IPCC AR4, as the trade quotes it
 * @param gwpAr4Epa the same with unsaturated constituents as the US agency counts them
 * @param gwpAr5 IPCC AR5
 * @param gwpAr6 IPCC AR6
 * @param molarMassGPerMol grams per mole
 * @param boilingBubbleC bubble point at 101.325 kPa
 * @param boilingDewC dew point at 101.325 kPa
 * @param criticalC critical temperature; empty where none is trusted
 * @param curveQuality reference or fitted; none where there is no trustworthy saturation curve
 * @param sources citation of each group of columns by name: composition, safety, odp, gwp-ar4,
 *     gwp-ar5, gwp-ar6, property
 * @param verified what of the row was read and what is from memory
 * @param source the row itself
 */
public record Refrigerant(
    String designation,
    String family,
    String zeotropeClass,
    Map<String, Double> composition,
    String safetyGroup,
    double odp,
    double gwpAr4,
    double gwpAr4Epa,
    double gwpAr5,
    double gwpAr6,
    double molarMassGPerMol,
    double boilingBubbleC,
    double boilingDewC,
    OptionalDouble criticalC,
    String curveQuality,
    Map<String, String> sources,
    String verified,
    Source source) {

  // parts are printed to a tenth of a percent
  private static final double COMPOSITION_TOLERANCE = 0.051;

  /**
   * @throws IllegalArgumentException when the composition does not add up or a figure is impossible
   */
  public Refrigerant {
    Objects.requireNonNull(designation);
    composition = Map.copyOf(composition);
    sources = Map.copyOf(sources);
    double whole = composition.values().stream().mapToDouble(Double::doubleValue).sum();
    if (Math.abs(whole - 100) > COMPOSITION_TOLERANCE) {
      throw new IllegalArgumentException("the composition adds up to " + whole + " %, not 100");
    }
    if (boilingDewC < boilingBubbleC) {
      throw new IllegalArgumentException("the dew point lies below the bubble point");
    }
  }

  public boolean contains(String constituent) {
    return composition.containsKey(constituent);
  }

  /** CFC and HCFC: the Montreal Protocol's classes I and II. */
  public boolean depletesOzone() {
    return family.equals("CFC") || family.equals("HCFC");
  }

  /** HFC and the blends that hold some. */
  public boolean holdsHfc() {
    return family.equals("HFC") || family.equals("HFO-HFC blend");
  }

  /** Burns: ASHRAE 34 groups 2L, 2 and 3. */
  public boolean flammable() {
    return !safetyGroup.endsWith("1");
  }

  /** Poisonous: ASHRAE 34 class B. */
  public boolean toxic() {
    return safetyGroup.startsWith("B");
  }

  /** Difference between dew and bubble point at 101.325 kPa. */
  public double glideK() {
    return boilingDewC - boilingBubbleC;
  }

  /** The same refrigerant, said to have a curve of that quality. */
  Refrigerant withCurve(String quality) {
    return new Refrigerant(
        designation,
        family,
        zeotropeClass,
        composition,
        safetyGroup,
        odp,
        gwpAr4,
        gwpAr4Epa,
        gwpAr5,
        gwpAr6,
        molarMassGPerMol,
        boilingBubbleC,
        boilingDewC,
        criticalC,
        quality,
        sources,
        verified,
        source);
  }
}
