package coldround;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The picture of docs/architecture.md, held: each arrow that is allowed stands here. */
class ArchitectureTest {

  private static final JavaClasses OURS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("coldround");

  /** Pure packages and the pure packages each may use. */
  private static final Map<String, Set<String>> PURE =
      Map.ofEntries(
          Map.entry("quantity", Set.of()),
          Map.entry("sheet", Set.of()),
          Map.entry("reason", Set.of("quantity")),
          Map.entry("table", Set.of("quantity", "reason", "sheet")),
          Map.entry("access", Set.of()),
          Map.entry("backup", Set.of()),
          Map.entry("feed", Set.of()),
          Map.entry("refrigerant", Set.of("quantity", "reason", "table")),
          Map.entry("fleet", Set.of("quantity", "reason", "table", "refrigerant")),
          Map.entry("intake", Set.of("quantity", "reason", "table", "sheet", "fleet")),
          Map.entry("scoring", Set.of("quantity", "reason", "table", "refrigerant", "fleet")),
          Map.entry(
              "upkeep", Set.of("quantity", "reason", "table", "refrigerant", "fleet", "scoring")),
          Map.entry(
              "field",
              Set.of(
                  "quantity",
                  "reason",
                  "table",
                  "sheet",
                  "refrigerant",
                  "fleet",
                  "intake",
                  "scoring",
                  "upkeep")),
          Map.entry(
              "replacement",
              Set.of("quantity", "reason", "table", "refrigerant", "fleet", "scoring", "upkeep")),
          Map.entry("rounds", Set.of("quantity", "reason", "table")),
          Map.entry(
              "pages",
              Set.of(
                  "quantity",
                  "reason",
                  "table",
                  "refrigerant",
                  "fleet",
                  "scoring",
                  "upkeep",
                  "rounds",
                  "intake",
                  "field")));

  /** What pure packages may use besides: no framework among it. */
  private static final String[] LIBRARIES = {
    "java..",
    "javax.crypto..",
    "javax.measure..",
    "tech.units..",
    "org.apache.commons.statistics..",
    "org.apache.commons.numbers.."
  };

  static Stream<String> purePackages() {
    return PURE.keySet().stream().sorted();
  }

  @Test
  void thePictureNamesEveryPackage() {
    Set<String> known = new TreeSet<>(PURE.keySet());
    known.addAll(List.of("app", "http", "store"));
    Set<String> found =
        OURS.stream()
            .map(c -> c.getPackageName().split("\\."))
            .filter(parts -> parts.length > 1)
            .map(parts -> parts[1])
            .collect(Collectors.toCollection(TreeSet::new));
    found.removeAll(known);
    assertEquals(Set.of(), found, "packages that the picture does not know");
  }

  @ParameterizedTest
  @MethodSource("purePackages")
  void aPurePackageUsesOnlyWhatLiesBelow(String name) {
    DescribedPredicate<JavaClass> allowed = resideInAnyPackage(LIBRARIES).or(inside(name));
    for (String below : PURE.get(name)) {
      allowed = allowed.or(inside(below));
    }
    if (name.equals("intake")) {
      allowed = allowed.or(resideInAnyPackage("org.apache.commons.text.similarity.."));
    }
    if (name.equals("sheet")) {
      allowed = allowed.or(resideInAnyPackage("com.opencsv..", "org.dhatim.."));
    }
    if (name.equals("replacement")) {
      allowed = allowed.or(resideInAPackage("com.google.ortools.."));
    }
    rule(name, allowed).check(OURS);
  }

  private static ArchRule rule(String name, DescribedPredicate<JavaClass> allowed) {
    return classes()
        .that(inside(name))
        .should()
        .onlyDependOnClassesThat(allowed)
        .allowEmptyShould(true);
  }

  /** A feature without its edge. */
  private static DescribedPredicate<JavaClass> inside(String name) {
    return resideInAPackage("coldround." + name + "..")
        .and(DescribedPredicate.not(resideInAPackage("coldround." + name + ".edge..")));
  }

  @ParameterizedTest
  @MethodSource("purePackages")
  void anEdgeIsUsedByNobodyButTheApplication(String name) {
    noClasses()
        .that(
            DescribedPredicate.not(
                resideInAnyPackage("coldround." + name + ".edge..", "coldround.app..")))
        .should()
        .dependOnClassesThat(resideInAPackage("coldround." + name + ".edge.."))
        .allowEmptyShould(true)
        .check(OURS);
  }

  @Test
  void nobodyUsesTheApplication() {
    noClasses()
        .that()
        .resideOutsideOfPackage("coldround.app..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("coldround.app..")
        .check(OURS);
  }

  @Test
  void theStoreKnowsNobodyWhoUsesIt() {
    rule(
            "store",
            resideInAnyPackage(
                "coldround.store..",
                "java..",
                "jakarta.persistence..",
                "org.hibernate..",
                "org.h2.."))
        .check(OURS);
  }

  @Test
  void aForbiddenArrowIsSeen() {
    ArchRule forbidden = rule("fleet", resideInAnyPackage("java.."));
    assertThrows(AssertionError.class, () -> forbidden.check(OURS));
  }
}
