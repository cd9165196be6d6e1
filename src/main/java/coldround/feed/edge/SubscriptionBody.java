package coldround.feed.edge;

import coldround.feed.EventTypes;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What is asked for by POST /subscriptions. */
record SubscriptionBody(
    @Schema(
            description =
                "Where changes are sent by POST: https, and a host of the public internet unless"
                    + " the operator lists its address",
            examples = "https://scheduler.example.org/coldround",
            required = true)
        String url,
    @Schema(
            description = "Kinds of change wanted; all when none is named",
            examples = "[\"coldround.task.planned\",\"coldround.task.withdrawn\"]")
        List<String> types,
    @Schema(
            description =
                "Cursor of the feed or its snapshot behind which telling begins; what is committed"
                    + " from now on when left out",
            examples = "f1.2s")
        String after,
    @Schema(description = "For people", examples = "Dispatch") String description) {

  private static final int LONGEST_URL = 2000;
  private static final int LONGEST_DESCRIPTION = 400;

  /** The URL, when all that can be seen here is right. */
  URI check(Function<URI, Optional<String>> fault) {
    List<FieldError> errors = new ArrayList<>();
    URI uri = uri(errors, fault);
    for (String type : wanted()) {
      if (type == null || !EventTypes.ALL.contains(type)) {
        errors.add(new FieldError("/types", type, "is one of " + EventTypes.ALL));
      }
    }
    if (said().length() > LONGEST_DESCRIPTION) {
      errors.add(
          new FieldError(
              "/description", null, "is at most " + LONGEST_DESCRIPTION + " characters long"));
    }
    if (!errors.isEmpty()) {
      throw Problem.badFields(errors);
    }
    return uri;
  }

  private URI uri(List<FieldError> errors, Function<URI, Optional<String>> fault) {
    if (url == null || url.isBlank() || url.length() > LONGEST_URL) {
      errors.add(
          new FieldError(
              "/url",
              url == null ? "" : null,
              "is where to send changes, at most 2000 characters"));
      return null;
    }
    try {
      URI uri = new URI(url).parseServerAuthority();
      fault.apply(uri).ifPresent(wrong -> errors.add(new FieldError("/url", url, wrong)));
      return uri;
    } catch (URISyntaxException e) {
      errors.add(new FieldError("/url", url, "is no URL such as https://example.org/hook"));
      return null;
    }
  }

  List<String> wanted() {
    return types == null ? List.of() : types.stream().distinct().toList();
  }

  String said() {
    return description == null ? "" : description;
  }
}
