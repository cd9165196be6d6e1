package coldround.replacement;

/** The rows that scoring/economics.csv must have. */
public enum EconomicRate {
  HORIZON("horizon"),
  INFLATION("inflation"),
  EQUIPMENT_GROWTH("equipment-growth"),
  SERVICE_GROWTH("service-growth"),
  AGEING_SHARE("ageing-share"),
  AGEING_CAP("ageing-cap"),
  AGEING_REFERENCE("ageing-reference"),
  TREND_PERSISTENCE("trend-persistence"),
  ENERGY_AGEING("energy-ageing"),
  ENERGY_AGEING_MOST("energy-ageing-most"),
  EFFICIENCY_GAIN("efficiency-gain"),
  CLEANINGS("cleanings"),
  GAS_SCARCITY("gas-scarcity"),
  GAS_SUPPLY_LEAST("gas-supply-least"),
  SIZE_EXPONENT("size-exponent"),
  SURCHARGE("surcharge"),
  PRICE_SPREAD("price-spread"),
  FAULT_COST_SPREAD("fault-cost-spread"),
  DEATH_SHARE("death-share"),
  DEATH_MOST("death-most");

  private final String row;

  EconomicRate(String row) {
    this.row = row;
  }

  String row() {
    return row;
  }
}
