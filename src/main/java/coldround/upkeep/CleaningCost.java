package coldround.upkeep;

/** What a cleaning of a condenser coil costs when it is done with other work. */
final class CleaningCost {

  private CleaningCost() {}

  /** Labour, its share of the trip and materials, in the currency of the cost table. */
  static double of(UnitCase unit) {
    UpkeepTables tables = unit.tables();
    PricesAt prices = unit.prices();
    int minutes = tables.catalogue().get(TaskCode.CONDENSER).minutes();
    double labour = prices.of("labour", Costs.ANY).amount() * minutes / 60;
    double trip =
        prices.of("trip", Costs.ANY).amount() * tables.limits().value(UpkeepLimit.TRIP_SHARE);
    double materials =
        tables.costs().has("materials", TaskCode.CONDENSER)
            ? prices.of("materials", TaskCode.CONDENSER).amount()
            : 0;
    return labour + trip + materials;
  }
}
