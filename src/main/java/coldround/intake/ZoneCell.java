package coldround.intake;

import java.time.ZoneId;
import java.util.Set;

/** A time zone by its name in the IANA database. */
record ZoneCell() implements CellReader {

  private static final Set<String> ZONES = ZoneId.getAvailableZoneIds();

  @Override
  public Object read(String text, Refusals refusals) {
    if (ZONES.contains(text)) {
      return ZoneId.of(text);
    }
    String nearest = Nearest.to(text, ZONES).map(zone -> " Did you mean " + zone + "?").orElse("");
    refusals.add(
        ProblemCode.UNKNOWN_ZONE,
        "'%s' is no IANA time zone.%s Write one such as America/New_York."
            .formatted(RowProblem.shown(text), nearest));
    return null;
  }
}
