package coldround.http;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Forms that make something: pressed twice, or sent again by loading the answer anew, they make it
 * once. Each page of the form has a key of its own for that.
 */
@ApplicationScoped
@Named("oncePressed")
public class OncePressed {

  private final OneCall calls;
  private final Caller caller;

  @Inject
  public OncePressed(OneCall calls, Caller caller) {
    this.calls = calls;
    this.caller = caller;
  }

  /** For the hidden field "once" of a form. */
  public String getKey() {
    return UUID.randomUUID().toString();
  }

  /**
   * Makes it, or finds out what the first press has made. What is made and that it was made are one
   * transaction.
   *
   * @param key as the form has sent it; null or empty for one without
   * @param content what was typed; with another content it is another sending
   * @param made makes it and answers its id
   * @return its id
   */
  public String id(String key, String content, Supplier<String> made) {
    String scope = caller.account().id() + '\n' + content;
    byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
    return calls
        .run(key, scope, bytes, () -> new Reply(303, made.get(), "", ""))
        .getHeaderString("Location");
  }
}
