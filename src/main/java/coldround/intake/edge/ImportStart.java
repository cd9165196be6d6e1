package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.http.Wrong;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;

/** The page from which a file is sent, which is also where a refusal is told. */
@ApplicationScoped
class ImportStart {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance start(
        List<ImportView.Option> kinds,
        List<ImportView.Option> profiles,
        Wrong wrong,
        List<String> other);
  }

  private static final List<String> FIELDS = List.of("kind", "file", "profile");

  private final StoredProfiles profiles;

  @Inject
  ImportStart(StoredProfiles profiles) {
    this.profiles = profiles;
  }

  /**
   * @param kind chosen already; empty for none
   * @param profile chosen already; empty for none
   */
  Response page(int status, String kind, String profile, Wrong wrong) {
    List<ImportView.Option> kinds =
        Arrays.stream(Kind.values())
            .map(Kind::code)
            .map(code -> new ImportView.Option(code, ImportView.title(code), code.equals(kind)))
            .toList();
    List<ImportView.Option> named =
        profiles.names().stream()
            .map(name -> new ImportView.Option(name, name, name.equals(profile)))
            .toList();
    return html(status, Templates.start(kinds, named, wrong, wrong.besides(FIELDS)));
  }

  static Response html(int status, TemplateInstance page) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page.render())
        .build();
  }
}
