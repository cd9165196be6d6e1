package coldround.rounds.edge;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * What may be sent, for the description. It is read field by field instead, so that all that is
 * wrong can be told at once, each with its place.
 */
final class RoundBodies {

  private RoundBodies() {}

  @Schema(name = "RoundOrder", description = "Rounds that are asked for")
  record Order(
      @Schema(description = "First day; usually today") LocalDate from,
      @Schema(description = "Last day, at most 31 with the first; usually five") LocalDate to,
      @Schema(description = "Codes; left out for all") List<String> technicians,
      @Schema(description = "Codes; left out for all") List<String> customers,
      @Schema(description = "How long to search") Integer seconds,
      @Schema(description = "The same seed and data make the same first plan") Long seed,
      @Schema(description = "By code of the technician") Map<String, List<LocalDate>> daysOff,
      @Schema(description = "Days on which nobody works") List<LocalDate> holidays,
      @Schema(description = "By technician: customer/site, another one's code, or coordinates")
          Map<String, Object> starts,
      @Schema(description = "As starts") Map<String, Object> ends) {}

  @Schema(name = "RoundsAgain", description = "How to search once more")
  record Again(
      @Schema(description = "How long to search; usually as before") Integer seconds,
      @Schema(description = "Usually as before") Long seed,
      @Schema(description = "Ids of emergencies that are not wanted any more, unless begun")
          List<String> withdrawn) {}

  @Schema(name = "Emergency", requiredProperties = "unit")
  record Emergency(
      @Schema(description = "Id of the unit") String unit,
      @Schema(description = "Length of the work; usually 60") Integer minutes,
      @Schema(description = "electrical or refrigerant; left out for none") String skill,
      @Schema(description = "A day of the plan, not yet past; usually today") LocalDate day) {}
}
