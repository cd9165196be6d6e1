package coldround.fleet.edge;

import coldround.fleet.Unit;
import coldround.fleet.edge.StoredEquipment.Equipment;

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

  static Place of(Equipment equipment) {
    return new Place(equipment.id(), equipment.unit().read(), equipment.site().atmosphereKpa());
  }
}
