package coldround.pages.edge;

import coldround.http.Problem;
import coldround.http.Wrong;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;

/** A refusal as a page: what is wrong and how to go on. */
public final class RefusedPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance refused(
        String title, List<String> details, String onward, String onwardTo);
  }

  private RefusedPage() {}

  /** Leads on to where the pages begin for the caller. */
  public static Response of(Problem problem) {
    return of(problem, "", "");
  }

  /**
   * @param onward address of the page to go on with
   * @param onwardTo what the link there says
   */
  public static Response of(Problem problem, String onward, String onwardTo) {
    String title = String.valueOf(problem.body().get("title"));
    Response.ResponseBuilder page =
        Response.status(problem.status())
            .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
            .entity(Templates.refused(title, details(problem), onward, onwardTo).render());
    problem.headers().forEach(page::header);
    return page.build();
  }

  /** Of several fields what is wrong with each; who may do it is for an office to say. */
  private static List<String> details(Problem problem) {
    if (problem.status() == 403) {
      return List.of("The role of your account may not do this. A planner can change that.");
    }
    return Wrong.of(problem).besides(List.of());
  }
}
