package coldround.demo;

import coldround.table.TableRow;

/** A site of the story, as far as the physics needs it. */
record Place(
    String customer,
    String code,
    double latitude,
    double longitude,
    double elevationM,
    String surroundings) {

  static Place of(TableRow row) {
    return new Place(
        row.required("customer"),
        row.required("site"),
        row.number("latitude"),
        row.number("longitude"),
        row.number("elevation [m]"),
        row.required("surroundings"));
  }

  /**
   * Air entering a condenser there, °C.
   *
   * @param where outdoors, roof, indoors or attic
   * @param outdoorC air in the shade outside
   */
  double condenserAirC(String where, double outdoorC) {
    return switch (where) {
      case "roof" -> outdoorC + (outdoorC > 15 ? 2.5 : 1);
      case "attic" -> outdoorC + (outdoorC > 10 ? 4 : 2.5);
      case "indoors" -> Math.max(19, roomC() + 0.25 * (outdoorC - 10));
      default -> outdoorC + 0.5;
    };
  }

  private double roomC() {
    return switch (surroundings) {
      case "greasy" -> 27;
      case "clean" -> 20.5;
      default -> 23;
    };
  }
}
