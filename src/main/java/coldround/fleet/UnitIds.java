package coldround.fleet;

import java.util.Collection;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Numbers of the store as the opaque ids of units that the outside sees. */
public final class UnitIds {

  private static final Pattern ID = Pattern.compile("u[0-9a-z]{1,12}");

  private UnitIds() {}

  public static String text(long id) {
    return "u" + Long.toString(id, 36);
  }

  /** Empty for a text that never was an id. */
  public static OptionalLong number(String text) {
    if (text == null || !ID.matcher(text).matches()) {
      return OptionalLong.empty();
    }
    return OptionalLong.of(Long.parseLong(text.substring(1), 36));
  }

  /** Of texts that all are ids, in their order. */
  public static List<Long> numbers(Collection<String> texts) {
    return texts.stream().map(text -> number(text).orElseThrow()).toList();
  }
}
