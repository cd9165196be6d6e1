package coldround.scoring;

import coldround.reason.Reason;
import java.util.ArrayList;
import java.util.List;

/**
 * Points lost to a refrigerant that is being phased out: 1 less its supply over the unit's life.
 */
final class RefrigerantFactor {

  private final double weight;

  RefrigerantFactor(ScoringRules rules) {
    this.weight = rules.weights().of(Weights.REFRIGERANT);
  }

  FactorScore score(SupplyState supply, LeakState leak) {
    List<Reason> reasons = new ArrayList<>(supply.reasons());
    if (leak.over()) {
      reasons.add(leak.reasons().get(0));
    }
    return FactorScore.of(
        Weights.REFRIGERANT,
        weight,
        1 - supply.share(),
        1 - supply.mostShare(),
        1 - supply.leastShare(),
        supply.known(),
        reasons);
  }
}
