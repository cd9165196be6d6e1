package coldround.access.edge;

import coldround.access.Role;
import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.FleetNames;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.http.Caller;
import coldround.http.Parameters;
import coldround.http.Wrong;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Lays out the page of accounts. */
@ApplicationScoped
class AccountBoard {

  private static final int SHOWN = 100;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private static final AccountBody BLANK = new AccountBody("", "", "", "", "", "");
  private static final List<String> FIELDS =
      List.of("name", "role", "customer", "technician", "expires", "login");

  /**
   * One account in the list.
   *
   * @param mark of the account as it is shown
   * @param login as it stands, or as it was typed and refused
   * @param wrong what was refused of this account
   */
  public record Line(
      String id,
      String mark,
      String name,
      String role,
      String whose,
      String state,
      String prefix,
      String until,
      String used,
      String login,
      boolean own,
      Wrong wrong) {
    public boolean isRevocable() {
      return !own && !state.equals("revoked");
    }

    public List<String> other() {
      return wrong.besides(List.of("login"));
    }
  }

  /**
   * What the page answers.
   *
   * @param made with its token, which is shown this once; null for none
   * @param again true where the first press of a button has made it
   * @param typed into the form of a new account
   * @param id of the account that the refusal is about; empty for a new one
   * @param login typed for that account; null where it was not about that
   */
  record Answer(
      AccountView made, boolean again, AccountBody typed, String id, String login, Wrong wrong) {

    static final Answer NOTHING = refused(BLANK, Wrong.NOTHING);

    static Answer made(AccountView made, boolean again) {
      return new Answer(made, again, BLANK, "", null, Wrong.NOTHING);
    }

    static Answer refused(AccountBody typed, Wrong wrong) {
      return new Answer(null, false, typed, "", null, wrong);
    }

    static Answer refused(String id, String login, Wrong wrong) {
      return new Answer(null, false, BLANK, id, login, wrong);
    }

    private boolean isAbout(AccountView account) {
      return account.id().equals(id) && wrong.any();
    }
  }

  /**
   * All that the page shows.
   *
   * @param provider how people call the provider of log-ins; empty where there is none
   * @param wrong with the form of a new account
   * @param other what is wrong and belongs to no field
   * @param next cursor of the following accounts; empty at the end
   */
  public record Book(
      List<Line> lines,
      String next,
      String provider,
      AccountView made,
      boolean again,
      AccountBody typed,
      Wrong wrong,
      List<String> other,
      List<String> roles,
      List<Customer> customers,
      List<Technician> technicians) {}

  private final AccountBook book;
  private final Fleet fleet;
  private final Today today;
  private final Caller caller;
  private final Provider provider;

  @Inject
  AccountBoard(AccountBook book, Fleet fleet, Today today, Caller caller, Provider provider) {
    this.book = book;
    this.fleet = fleet;
    this.today = today;
    this.caller = caller;
    this.provider = provider;
  }

  /**
   * @param after place in the list; empty for its beginning
   */
  Book book(String after, Answer answer) {
    List<AccountView> found = book.list(after, SHOWN + 1);
    boolean more = found.size() > SHOWN;
    List<AccountView> shown = more ? found.subList(0, SHOWN) : found;
    FleetNames names = new FleetNames(fleet);
    // one further down the list is told of on top
    boolean atLine = shown.stream().anyMatch(answer::isAbout);
    Wrong wrong = atLine ? Wrong.NOTHING : answer.wrong;
    return new Book(
        shown.stream().map(account -> line(account, answer, names)).toList(),
        more ? Parameters.cursor(shown.get(SHOWN - 1).id()) : "",
        provider.name(),
        answer.made,
        answer.again,
        answer.typed,
        wrong,
        wrong.besides(answer.id.isEmpty() ? FIELDS : List.of()),
        List.of(Role.values()).stream().map(Role::code).toList(),
        fleet.customers(),
        fleet.technicians());
  }

  private Line line(AccountView account, Answer answer, FleetNames names) {
    boolean here = answer.isAbout(account);
    String login = here && answer.login != null ? answer.login : account.login();
    return new Line(
        account.id(),
        account.mark(),
        account.name(),
        account.role(),
        whose(account, names),
        account.state(),
        account.tokenPrefix(),
        day(account.expires()),
        day(account.lastUsed()),
        login == null ? "" : login,
        account.id().equals(caller.account().id()),
        here ? answer.wrong : Wrong.NOTHING);
  }

  /** Whose fleet or rounds it reads: the name and, as two may have the same, the code. */
  private static String whose(AccountView account, FleetNames names) {
    boolean customer = !said(account.customer()).isEmpty();
    String code = customer ? account.customer() : said(account.technician());
    String name = customer ? names.customer(code) : names.technician(code);
    return code.isEmpty() || name.equals(code) ? code : name + " (" + code + ")";
  }

  private static String said(String text) {
    return text == null ? "" : text;
  }

  private String day(Instant moment) {
    return moment == null ? "" : DAY.format(moment.atZone(today.usual()));
  }
}
