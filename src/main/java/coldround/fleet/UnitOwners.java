package coldround.fleet;

import coldround.fleet.UnitNames.UnitName;
import java.util.Optional;

/** Whose a unit is, without reading its history. */
public interface UnitOwners {

  /** Empty for an id that there is not. */
  Optional<UnitName> of(String unitId);
}
