package coldround.http;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.util.List;

/** What a form is answered when the login has run out: how to enter and send it once more. */
public final class ExpiredPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance expired(String action, List<Sent> fields);
  }

  /** A field as it was sent, to be sent again. */
  public record Sent(String name, String value) {}

  private ExpiredPage() {}

  /** For a form of which nothing was read: the browser has it still. */
  public static String html() {
    return Templates.expired("", List.of()).render();
  }

  /** With a button that sends it again as it was. */
  public static String html(String action, List<Sent> fields) {
    return Templates.expired(action, fields).render();
  }
}
