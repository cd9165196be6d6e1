package coldround.access.edge;

import coldround.access.Role;
import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.http.Caller;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Wrong;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Accounts for the office: who has one, a new one, a new token, an end. */
@Path("/accounts")
@Produces(MediaType.TEXT_HTML)
public class AccountPages {

  private static final int SHOWN = 100;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance accounts(Book book);
  }

  /** One account in the list. */
  public record Line(
      String id,
      String name,
      String role,
      String whose,
      String state,
      String prefix,
      String until,
      String used,
      String login,
      boolean own) {
    public boolean isRevocable() {
      return !own && !state.equals("revoked");
    }
  }

  /**
   * All that the page shows.
   *
   * @param made with its token, which is shown this once; null for none
   * @param provider how people call the provider of log-ins; empty where there is none
   * @param other what is wrong and belongs to no field
   * @param next cursor of the following accounts; empty at the end
   */
  public record Book(
      List<Line> lines,
      String next,
      String provider,
      AccountView made,
      AccountBody typed,
      Wrong wrong,
      List<String> other,
      List<String> roles,
      List<Customer> customers,
      List<Technician> technicians) {}

  private static final AccountBody BLANK = new AccountBody("", "", "", "", "", "");

  private static final List<String> FIELDS =
      List.of("name", "role", "customer", "technician", "expires", "login");

  private final AccountBook book;
  private final Fleet fleet;
  private final Today today;
  private final Caller caller;
  private final Provider provider;

  @Inject
  AccountPages(AccountBook book, Fleet fleet, Today today, Caller caller, Provider provider) {
    this.book = book;
    this.fleet = fleet;
    this.today = today;
    this.caller = caller;
    this.provider = provider;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response list(@QueryParam("after") String after) {
    try {
      return page(200, Parameters.place(after), null, BLANK, Wrong.NOTHING);
    } catch (Problem problem) {
      return refused(problem, BLANK);
    }
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response make(
      @FormParam("name") String name,
      @FormParam("role") String role,
      @FormParam("customer") String customer,
      @FormParam("technician") String technician,
      @FormParam("expires") String expires,
      @FormParam("login") String login) {
    AccountBody typed = new AccountBody(name, role, customer, technician, expires, login);
    return told(typed, () -> book.make(meant(typed)));
  }

  /** What another role would need may have been left in the form; a day ends with the day. */
  private AccountBody meant(AccountBody typed) {
    String expires = typed.expires();
    if (expires != null && !expires.isBlank()) {
      LocalDate day = Parameters.date("/expires", expires.strip(), null);
      expires = day.plusDays(1).atStartOfDay(today.usual()).toInstant().toString();
    }
    Role role = Role.find(typed.role()).orElse(null);
    return new AccountBody(
        typed.name(),
        typed.role(),
        role == Role.CUSTOMER ? typed.customer() : "",
        role == Role.TECHNICIAN ? typed.technician() : "",
        expires,
        typed.login());
  }

  @POST
  @Path("{id}/renew")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response renew(@PathParam("id") String id) {
    return told(BLANK, () -> book.renew(id, new AccountBody.Renewal(null)));
  }

  @POST
  @Path("{id}/login")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response login(@PathParam("id") String id, @FormParam("login") String login) {
    return told(BLANK, () -> book.login(id, new AccountBody.Login(login)));
  }

  @POST
  @Path("{id}/revoke")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response revoke(@PathParam("id") String id) {
    return told(BLANK, () -> book.revoke(id));
  }

  private Response told(AccountBody typed, Supplier<AccountView> work) {
    try {
      return page(200, "", work.get(), BLANK, Wrong.NOTHING);
    } catch (Problem problem) {
      return refused(problem, typed);
    }
  }

  private Response refused(Problem problem, AccountBody typed) {
    return page(problem.status(), "", null, typed, Wrong.of(problem));
  }

  private Response page(
      int status, String after, AccountView made, AccountBody typed, Wrong wrong) {
    List<AccountView> found = book.list(after, SHOWN + 1);
    boolean more = found.size() > SHOWN;
    List<AccountView> shown = more ? found.subList(0, SHOWN) : found;
    Book all =
        new Book(
            shown.stream().map(this::line).toList(),
            more ? Parameters.cursor(shown.get(SHOWN - 1).id()) : "",
            provider.name(),
            made,
            typed,
            wrong,
            wrong.besides(FIELDS),
            List.of(Role.values()).stream().map(Role::code).toList(),
            fleet.customers(),
            fleet.technicians());
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .header("Cache-Control", "no-store")
        .entity(Templates.accounts(all).render())
        .build();
  }

  private Line line(AccountView account) {
    return new Line(
        account.id(),
        account.name(),
        account.role(),
        account.customer() + account.technician(),
        account.state(),
        account.tokenPrefix(),
        day(account.expires()),
        day(account.lastUsed()),
        account.login() == null ? "" : account.login(),
        account.id().equals(caller.account().id()));
  }

  private String day(Instant moment) {
    return moment == null ? "" : DAY.format(moment.atZone(today.usual()));
  }
}
