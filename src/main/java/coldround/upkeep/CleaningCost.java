package coldround.upkeep;

/** What a cleaning of a condenser coil costs when it is done with other work. */
final class CleaningCost {

  private CleaningCost() {}

  /** Labour, its share of the trip and materials, in the currency of the cost table. */
  static double of(UnitCase unit) {
    UpkeepTables tables = unit.tables();
    Costs costs = tables.costs();
    String place = unit.jurisdiction();
    int minutes = tables.catalogue().get(TaskCode.CONDENSER).minutes();
    double labour = costs.of("labour", "*", place).amount() * minutes / 60;
    double trip =
        costs.of("trip", "*", place).amount() * tables.limits().value(UpkeepLimit.TRIP_SHARE);
    double materials =
        costs.has("materials", TaskCode.CONDENSER)
            ? costs.of("materials", TaskCode.CONDENSER, place).amount()
            : 0;
    return labour + trip + materials;
  }
}
