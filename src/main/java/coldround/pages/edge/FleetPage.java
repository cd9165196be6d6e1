package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.http.Caller;
import coldround.http.Kept;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.FleetRow;
import coldround.pages.Words;
import coldround.quantity.MeasureSystem;
import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Place;
import coldround.scoring.FleetList.Search;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** The fleet, worst first. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class FleetPage {

  private static final int LINES = 50;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance fleet(
        List<FleetRow> rows,
        String count,
        FleetLinks links,
        String next,
        boolean further,
        Choices choices);

    static native TemplateInstance empty(String address);
  }

  /** What can be chosen in the form. */
  public record Choices(List<Choice> customers, List<Choice> kinds, List<Choice> refrigerants) {}

  private final FleetList list;
  private final Fleet fleet;
  private final Today today;
  private final Caller caller;

  @Inject
  FleetPage(FleetList list, Fleet fleet, Today today, Caller caller) {
    this.list = list;
    this.fleet = fleet;
    this.today = today;
    this.caller = caller;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(hidden = true)
  public TemplateInstance fleet(
      @QueryParam("q") String text,
      @QueryParam("customer") String customer,
      @QueryParam("site") String site,
      @QueryParam("kind") String kind,
      @QueryParam("refrigerant") String refrigerant,
      @QueryParam("order") String order,
      @QueryParam("measures") String measures,
      @QueryParam("after") String after,
      @Context UriInfo uri) {
    Search search = new Search(customer, site, "", kind, refrigerant, text);
    MeasureSystem system = Parameters.measures(measures);
    FleetLinks links = new FleetLinks(search, order(order), system);
    Place place = place(after);
    FleetList.Found found = list.find(search, links.order(), place, LINES + 1);
    return found.count() == 0 && !links.searching() && caller.isPlanner()
        ? Templates.empty(uri.getBaseUri().toString())
        : page(links, place, found);
  }

  private TemplateInstance page(FleetLinks links, Place place, FleetList.Found found) {
    List<FleetLine> lines = found.lines();
    boolean more = lines.size() > LINES;
    List<FleetLine> shown = more ? lines.subList(0, LINES) : lines;
    LocalDate day = today.usually();
    List<FleetRow> rows = shown.stream().map(line -> FleetRow.of(line, day)).toList();
    String next = more ? links.following(cursor(shown.get(LINES - 1))) : "";
    String count = Words.count(found.count(), "unit", "units");
    return Templates.fleet(rows, count, links, next, place != null, choices(links.search()));
  }

  private static String cursor(FleetLine last) {
    return Parameters.cursor(Place.of(last).text());
  }

  private Choices choices(Search search) {
    FleetList.Range range = list.range();
    return new Choices(
        fleet.customers().stream()
            .filter(c -> caller.customer().isEmpty() || c.code().equals(caller.customer()))
            .map(c -> choice(c.code(), c.name().isEmpty() ? c.code() : c.name(), search.customer()))
            .toList(),
        choices(range.kinds(), Words::title, search.kind()),
        choices(range.refrigerants(), UnaryOperator.identity(), search.refrigerant()));
  }

  private static List<Choice> choices(
      List<String> codes, UnaryOperator<String> label, String chosen) {
    return codes.stream().map(code -> choice(code, label.apply(code), chosen)).toList();
  }

  private static Choice choice(String code, String label, String chosen) {
    return new Choice(code, label, code.equals(chosen));
  }

  private static Order order(String text) {
    if (text == null || text.isEmpty()) {
      return Order.SCORE;
    }
    for (Order order : Order.values()) {
      if (order.name().toLowerCase(Locale.ROOT).equals(text)) {
        return order;
      }
    }
    throw Problem.badField("order", text, "is score, due or name");
  }

  private static Place place(String cursor) {
    String place = Parameters.place(cursor);
    try {
      return place.isEmpty() ? null : Place.parse(place);
    } catch (IllegalArgumentException | java.time.DateTimeException e) {
      throw Parameters.badCursor(cursor);
    }
  }
}
