package coldround.scoring;

import coldround.refrigerant.Refrigerant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/** Which cautions fit a unit: by its refrigerant, its place and what it keeps. */
final class Situations {

  private record Case(String safetyGroup, String designation, String place, KindRule kind) {}

  private final Cautions cautions;
  private final Map<Case, List<String>> texts = new ConcurrentHashMap<>();

  Situations(Cautions cautions) {
    this.cautions = cautions;
  }

  List<String> cautions(Evidence evidence) {
    Refrigerant gas = evidence.gas().refrigerant();
    String place = evidence.unit().condenserPlace();
    Case its =
        new Case(
            gas == null ? "" : gas.safetyGroup(),
            gas == null ? "" : gas.designation(),
            place.isEmpty() ? evidence.kind().condenserPlace() : place,
            evidence.kind());
    return texts.computeIfAbsent(its, c -> cautions.of(of(c)));
  }

  private static Set<String> of(Case its) {
    Set<String> situations = new TreeSet<>(Set.of("always", "electrical", "circuit"));
    situations.add("coil-cleaner");
    situations.add(its.place);
    situations.addAll(ofGas(its.safetyGroup, its.designation));
    if (its.kind.food()) {
      situations.add("food");
    }
    if (its.kind.kind().startsWith("walk-in")) {
      situations.add("walk-in");
    }
    return situations;
  }

  /** Those that a refrigerant brings by its safety group. */
  static Set<String> ofGas(Refrigerant gas) {
    return ofGas(gas.safetyGroup(), gas.designation());
  }

  private static Set<String> ofGas(String safetyGroup, String designation) {
    Set<String> situations = new TreeSet<>();
    if (safetyGroup.endsWith("2L")) {
      situations.add("A2L");
    } else if (safetyGroup.endsWith("2") || safetyGroup.endsWith("3")) {
      situations.add("A3");
    }
    if (safetyGroup.startsWith("B")) {
      situations.add("toxic");
    }
    if (designation.equals("R-744")) {
      situations.add("CO2");
    }
    return situations;
  }
}
