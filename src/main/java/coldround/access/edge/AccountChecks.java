package coldround.access.edge;

import coldround.access.Role;
import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.Technician;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/** What is asked for an account, read field by field; what is wrong is told all at once. */
final class AccountChecks {

  private static final int LONGEST_NAME = 200;
  private static final int LONGEST_LOGIN = 255;

  private final Fleet fleet;
  private final Instant now;
  private final Duration lasts;
  private final List<FieldError> wrong = new ArrayList<>();

  /**
   * @param lasts how long a token holds where nothing else is said
   */
  AccountChecks(Fleet fleet, Instant now, Duration lasts) {
    this.fleet = fleet;
    this.now = now;
    this.lasts = lasts;
  }

  /** Without blanks around it; empty where nothing is said. */
  static String text(String said) {
    return said == null ? "" : said.strip();
  }

  private void wrong(String field, String said, String message) {
    wrong.add(new FieldError(field, said, message));
  }

  /**
   * @throws Problem 400 with every field that was wrong
   */
  void refuse() {
    if (!wrong.isEmpty()) {
      throw Problem.badFields(wrong);
    }
  }

  // forms come here with what JSON could not bring
  private boolean nul(String field, String said) {
    boolean nul = said.indexOf('\0') >= 0;
    if (nul) {
      wrong(field, "", "holds the character NUL; leave it out");
    }
    return nul;
  }

  String name(String said) {
    String name = text(said);
    nul("/name", name);
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      wrong("/name", name, "names the person or program, 1 to 200 characters");
    }
    return name;
  }

  /** Its code, with the customer or technician that belongs to it and nothing else. */
  String role(AccountBody asked) {
    String said = text(asked.role());
    Role.find(said)
        .ifPresentOrElse(
            role -> {
              belongs("/customer", asked.customer(), role == Role.CUSTOMER, this::customers);
              belongs(
                  "/technician", asked.technician(), role == Role.TECHNICIAN, this::technicians);
            },
            () -> wrong("/role", said, "is planner, technician, customer or scheduler"));
    return said;
  }

  private List<String> customers() {
    return fleet.customers().stream().map(Customer::code).toList();
  }

  private List<String> technicians() {
    return fleet.technicians().stream().map(Technician::code).toList();
  }

  private void belongs(String field, String said, boolean needed, Supplier<List<String>> codes) {
    String code = text(said);
    String whose = field.substring(1);
    if (needed && !codes.get().contains(code)) {
      wrong(field, code, "is the code of a " + whose + " that is known");
    } else if (!needed && !code.isEmpty()) {
      wrong(field, code, "is left out where the role is not " + whose);
    }
  }

  Instant expires(String said) {
    if (text(said).isEmpty()) {
      return now.plus(lasts);
    }
    try {
      Instant until = Instant.parse(said.strip()).truncatedTo(ChronoUnit.MICROS);
      if (until.isAfter(now)
          && until.isBefore(now.plus(100 * lasts.toDays() + 1, ChronoUnit.DAYS))) {
        return until;
      }
    } catch (DateTimeParseException e) {
      // told below
    }
    wrong("/expires", said, "is a moment to come such as 2027-12-31T00:00:00Z, not too far off");
    return null;
  }

  /**
   * How the person is called where they log in.
   *
   * @param id of the account whose it may be already, empty for none
   * @return null where none is wanted
   */
  String login(String said, String id) {
    String login = text(said);
    if (nul("/login", login)) {
      return null;
    }
    if (login.length() > LONGEST_LOGIN) {
      wrong("/login", login, "has at most 255 characters");
    } else if (AccountRow.count(
            "lower(login) = ?1 and id <> ?2", login.toLowerCase(Locale.ROOT), id)
        > 0) {
      wrong("/login", login, "belongs to another account; take it there first");
    }
    return login.isEmpty() ? null : login;
  }
}
