package coldround.quantity;

/** Air pressure by elevation in the standard atmosphere (ICAO Doc 7488, lowest layer). */
public final class Atmosphere {

  /** At sea level. */
  public static final double SEA_LEVEL_KPA = 101.325;

  // ICAO Doc 7488: 288.15 K and -6.5 K/km at sea level; exponent g/(R L) = 5.25588
  private static final double SEA_LEVEL_K = 288.15;
  private static final double LAPSE_K_PER_M = 0.0065;
  private static final double EXPONENT = 5.25588;

  private Atmosphere() {}

  /**
   * @param elevationM metres over sea level, -500 to 11000
   * @return absolute pressure in kPa
   * @throws IllegalArgumentException outside the lowest layer
   */
  public static double pressureKpa(double elevationM) {
    if (!(elevationM >= -500 && elevationM <= 11000)) {
      throw new IllegalArgumentException("elevation must be -500 to 11000 m, not " + elevationM);
    }
    return SEA_LEVEL_KPA * Math.pow(1 - LAPSE_K_PER_M * elevationM / SEA_LEVEL_K, EXPONENT);
  }
}
