package coldround.pages.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import coldround.pages.ReaderNumbers;
import coldround.pages.RoofBook;
import coldround.pages.RoofForm;
import coldround.pages.RoofView;
import coldround.pages.TypedNumber;
import coldround.quantity.Atmosphere;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.refrigerant.ExpectedHead;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.scoring.RoofCheck;
import coldround.scoring.RoofCheck.Finding;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** The calculator for the roof: what the gauge should show, and what it means when it does not. */
@Path("/refrigerants")
@Produces(MediaType.TEXT_HTML)
public class RoofPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance roof(
        RoofForm form,
        List<String> designations,
        RoofView answer,
        Wrong wrong,
        List<String> cautions);
  }

  /** Fields of the form. */
  public static class Typed {
    @QueryParam("refrigerant")
    String refrigerant;

    @QueryParam("ambient")
    String ambient;

    @QueryParam("split")
    String split;

    @QueryParam("head")
    String head;

    @QueryParam("elevation")
    String elevation;

    @QueryParam("measures")
    String measures;

    RoofForm form() {
      return new RoofForm(
          refrigerant, ambient, split, head, elevation, Parameters.measures(measures));
    }
  }

  private final Refrigerants refrigerants;
  private final RoofCheck check;

  private final Answers answers;

  @Inject
  RoofPage(Refrigerants refrigerants, RoofCheck check, Answers answers) {
    this.answers = answers;
    this.refrigerants = refrigerants;
    this.check = check;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(hidden = true)
  public Response roof(@BeanParam Typed typed, @Context HttpHeaders headers) {
    Locale language = ReaderNumbers.language(headers.getAcceptableLanguages());
    RoofForm form = typed.form().withUsualSplit(check.usualSplitK());
    Optional<Refrigerant> gas = refrigerants.find(form.refrigerant());
    List<FieldError> wrong = new ArrayList<>();
    RoofView answer = form.untouched() ? null : new Reading(form, gas, language, wrong).answer();
    List<String> designations =
        refrigerants.all().stream()
            .map(Refrigerant::designation)
            .filter(name -> refrigerants.curve(name).isPresent())
            .toList();
    return Response.status(wrong.isEmpty() ? 200 : 400)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(
            Templates.roof(form, designations, answer, new Wrong(wrong), check.cautions(gas))
                .render())
        .build();
  }

  @GET
  @Path("curves")
  @Produces(MediaType.APPLICATION_JSON)
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(hidden = true)
  public Response curves(@Context Request request) {
    return answers.read(RoofBook.of(refrigerants, check), request);
  }

  /** Reads one form; what is wrong with it is collected. */
  private final class Reading {
    private final RoofForm form;
    private final Optional<Refrigerant> gas;
    private final Locale language;
    private final List<FieldError> wrong;

    Reading(RoofForm form, Optional<Refrigerant> gas, Locale language, List<FieldError> wrong) {
      this.form = form;
      this.gas = gas;
      this.language = language;
      this.wrong = wrong;
    }

    /** Null when something is wrong. */
    RoofView answer() {
      SaturationCurve curve = curve();
      double ambientC = number("ambient", form.ambient(), form.temperatureMeasure());
      double splitK = number("split", form.split(), form.splitMeasure());
      if (splitK <= 0) {
        wrong("split", form.split(), "is above zero, as a condenser is warmer than its air");
      }
      double airKpa = airKpa();
      double headKpa =
          form.head().isEmpty()
              ? Double.NaN
              : number("head", form.head(), form.pressureMeasure()) + airKpa;
      return wrong.isEmpty() ? answer(curve, ambientC, splitK, headKpa, airKpa) : null;
    }

    private RoofView answer(
        SaturationCurve curve, double ambientC, double splitK, double headKpa, double airKpa) {
      String blamed = "ambient";
      try {
        ExpectedHead expected = ExpectedHead.of(curve, ambientC, splitK);
        blamed = "head";
        Finding found = finding(curve, ambientC, splitK, headKpa);
        return RoofView.of(expected, found, airKpa, form.system());
      } catch (OutsideTable e) {
        wrong(blamed, blamed.equals("head") ? form.head() : form.ambient(), e.getMessage());
        return null;
      }
    }

    private Finding finding(SaturationCurve curve, double ambientC, double splitK, double headKpa) {
      if (Double.isNaN(headKpa)) {
        return null;
      }
      double readK = ExpectedHead.splitK(curve, headKpa, ambientC);
      return check.judge(ambientC, readK, splitK);
    }

    private SaturationCurve curve() {
      Optional<SaturationCurve> curve = gas.flatMap(its -> refrigerants.curve(its.designation()));
      if (curve.isEmpty()) {
        String message =
            gas.isPresent()
                ? "has no saturation curve that can be trusted; use its maker's chart"
                : "is a refrigerant of the list, as on the nameplate, such as R-404A";
        wrong("refrigerant", form.refrigerant(), message);
      }
      return curve.orElse(null);
    }

    private double airKpa() {
      if (form.elevation().isEmpty()) {
        return Atmosphere.SEA_LEVEL_KPA;
      }
      double km = number("elevation", form.elevation(), form.elevationMeasure());
      try {
        return Atmosphere.pressureKpa(km * 1000);
      } catch (IllegalArgumentException e) {
        wrong("elevation", form.elevation(), "lies from -500 m to 11000 m (-1640 ft to 36089 ft)");
        return Double.NaN;
      }
    }

    private double number(String name, String text, Measure measure) {
      try {
        return new Quantity(Parameters.number(name, TypedNumber.plain(text, language)), measure)
            .base();
      } catch (Problem problem) {
        wrong.addAll(problem.errors());
        return Double.NaN;
      }
    }

    private void wrong(String field, String value, String message) {
      wrong.add(new FieldError(field, value, message));
    }
  }
}
