package coldround.demo;

import coldround.table.TableRow;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One unit of the story.
 *
 * @param growth how much faster than its surroundings suggest the condenser gets dirty
 * @param quirks what is wrong with it from the start
 */
record Plant(
    Place site,
    String tag,
    Model model,
    Optional<LocalDate> installed,
    String where,
    String machine,
    Care care,
    double growth,
    Set<String> quirks,
    Optional<LocalDate> retired) {

  static Plant of(TableRow row, Map<String, Place> sites, Map<String, Model> models) {
    String[] id = row.required("id").split("/");
    return new Plant(
        sites.get(id[0]),
        id[1],
        models.get(row.required("model")),
        row.optionalDate("installed"),
        row.required("place"),
        row.text("machine"),
        Care.of(row.required("care")),
        row.number("growth"),
        Set.copyOf(row.codes("quirks")),
        row.optionalDate("retired"));
  }

  String id() {
    return site.code() + "/" + tag;
  }

  boolean has(String quirk) {
    return quirks.contains(quirk);
  }
}
