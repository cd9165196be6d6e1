package coldround.upkeep;

import java.util.List;

/** One rule of upkeep: asks for tasks by a date, each with its reason, or for nothing. */
interface UpkeepRule {

  List<Ask> asks(UnitCase unit);
}
