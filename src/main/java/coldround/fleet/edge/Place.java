package coldround.fleet.edge;

import coldround.fleet.Unit;

/**
 * Where readings are taken.
 *
 * @param id of the unit
 * @param atmosphereKpa air pressure there
 */
record Place(long id, Unit unit, double atmosphereKpa) {
  static Place of(UnitRow row) {
    return new Place(row.id, row.read(), row.site.read().atmosphereKpa());
  }
}
