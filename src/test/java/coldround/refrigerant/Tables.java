package coldround.refrigerant;

import coldround.table.RuleTables;

/** The packaged rule tables, read once for the tests of this package. */
final class Tables {

  static final Refrigerants REFRIGERANTS = refrigerants();

  private Tables() {}

  private static Refrigerants refrigerants() {
    RuleTables tables = new RuleTables("scoring", null);
    Refrigerants read = Refrigerants.load(tables);
    tables.check();
    return read;
  }

  static Refrigerant refrigerant(String designation) {
    return REFRIGERANTS.find(designation).orElseThrow();
  }

  static SaturationCurve curve(String designation) {
    return REFRIGERANTS.curve(designation).orElseThrow();
  }
}
