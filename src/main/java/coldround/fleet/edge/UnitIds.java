package coldround.fleet.edge;

import java.util.OptionalLong;

/** Numbers of the store as the opaque ids that the outside sees. */
final class UnitIds {

  private UnitIds() {}

  static String text(long id) {
    return "u" + Long.toString(id, 36);
  }

  /** Empty for a text that never was an id. */
  static OptionalLong number(String text) {
    if (text == null || !text.matches("u[0-9a-z]{1,12}")) {
      return OptionalLong.empty();
    }
    return OptionalLong.of(Long.parseLong(text.substring(1), 36));
  }
}
