package coldround.intake.edge;

import coldround.access.Role;
import coldround.http.Problem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The demo fleet, to look around in an empty service and to be rid of afterwards. */
@Path("/demo-fleet")
@Produces(MediaType.TEXT_HTML)
public class DemoPages {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance demo(String hindrance);
  }

  private final DemoFleet demo;

  @Inject
  DemoPages(DemoFleet demo) {
    this.demo = demo;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public TemplateInstance ask() {
    return Templates.demo(demo.hindrance());
  }

  @POST
  @Path("load")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response load() {
    try {
      return to("/imports/" + demo.loadLater().open().begun().id());
    } catch (Problem problem) {
      return refused(problem);
    }
  }

  @POST
  @Path("wipe")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response wipe() {
    try {
      // pressed twice it is gone already
      if (!demo.isGone()) {
        demo.wipe();
      }
      return to("/");
    } catch (Problem problem) {
      return refused(problem);
    }
  }

  private static Response to(String place) {
    return Response.seeOther(URI.create(place)).build();
  }

  private static Response refused(Problem problem) {
    return Response.status(problem.status())
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(Templates.demo(problem.getMessage()).render())
        .build();
  }
}
