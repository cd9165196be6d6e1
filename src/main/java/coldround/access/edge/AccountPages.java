package coldround.access.edge;

import coldround.access.Role;
import coldround.access.edge.AccountBoard.Answer;
import coldround.access.edge.AccountBoard.Book;
import coldround.fleet.Today;
import coldround.http.OncePressed;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Accounts for the office: who has one, a new one, a new token, an end. */
@Path("/accounts")
@Produces(MediaType.TEXT_HTML)
public class AccountPages {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance accounts(Book book);
  }

  private static final Map<String, String> CHOSEN =
      Map.of(
          "/customer", "is one of the customers in the list",
          "/technician", "is one of the technicians in the list",
          "/expires", "is a day to come, not too far off");

  private static final Wrong MEANWHILE =
      Wrong.saying(
          "This account was changed meanwhile, by somebody else or by a first press of the button."
              + " It is shown as it stands now.");

  private final AccountBook book;
  private final AccountBoard board;
  private final Today today;
  private final OncePressed presses;

  @Inject
  AccountPages(AccountBook book, AccountBoard board, Today today, OncePressed presses) {
    this.book = book;
    this.board = board;
    this.today = today;
    this.presses = presses;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response list(@QueryParam("after") String after) {
    try {
      return page(200, Parameters.place(after), Answer.NOTHING);
    } catch (Problem problem) {
      return page(problem.status(), "", Answer.refused("", null, Wrong.of(problem)));
    }
  }

  @POST
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response make(
      @FormParam("name") String name,
      @FormParam("role") String role,
      @FormParam("customer") String customer,
      @FormParam("technician") String technician,
      @FormParam("expires") String expires,
      @FormParam("login") String login,
      @FormParam("once") String once) {
    AccountBody typed = new AccountBody(name, role, customer, technician, expires, login);
    try {
      AccountBody meant = meant(typed);
      // a token is told to the press that has made it and kept nowhere
      AtomicReference<AccountView> made = new AtomicReference<>();
      String id =
          presses.id(
              once,
              "account " + meant,
              () -> {
                made.set(book.make(meant));
                return made.get().id();
              });
      boolean again = made.get() == null;
      return page(200, "", Answer.made(again ? book.read(id) : made.get(), again));
    } catch (Problem problem) {
      return page(problem.status(), "", Answer.refused(typed, atFields(problem)));
    }
  }

  /** As the form asks: by lists to choose from, and for a day instead of a moment. */
  private static Wrong atFields(Problem problem) {
    List<FieldError> errors = Wrong.of(problem).errors();
    return new Wrong(
        errors.stream()
            .map(
                e ->
                    new FieldError(e.field(), e.value(), CHOSEN.getOrDefault(said(e), e.message())))
            .toList());
  }

  private static String said(FieldError error) {
    boolean moment = error.field().equals("/expires") && error.message().contains("moment");
    return moment || !error.field().equals("/expires") ? error.field() : "";
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
  public Response renew(@PathParam("id") String id, @FormParam("seen") String seen) {
    return told(id, null, () -> book.renew(id, new AccountBody.Renewal(null), seen));
  }

  @POST
  @Path("{id}/login")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response login(
      @PathParam("id") String id,
      @FormParam("login") String login,
      @FormParam("seen") String seen) {
    return told(id, login, () -> book.login(id, new AccountBody.Login(login), seen));
  }

  @POST
  @Path("{id}/revoke")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response revoke(@PathParam("id") String id) {
    return told(id, null, () -> book.revoke(id));
  }

  private Response told(String id, String login, Supplier<AccountView> work) {
    try {
      return page(200, "", Answer.made(work.get(), false));
    } catch (Problem problem) {
      Wrong wrong = problem.status() == 412 ? MEANWHILE : Wrong.of(problem);
      return page(problem.status(), "", Answer.refused(id, login, wrong));
    }
  }

  private Response page(int status, String after, Answer answer) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .header("Cache-Control", "no-store")
        .entity(Templates.accounts(board.book(after, answer)).render())
        .build();
  }
}
