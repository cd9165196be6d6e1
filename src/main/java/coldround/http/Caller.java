package coldround.http;

import coldround.access.Account;
import coldround.access.Home;
import coldround.access.Role;
import coldround.access.SiteGrants;
import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.inject.Named;

/** Who calls, and what of the fleet is there for them. Outside of a call it is the service. */
@ApplicationScoped
@Named("caller")
public class Caller {

  /** Attribute of the identity that holds the {@link Account}. */
  public static final String ACCOUNT = "coldround.account";

  /**
   * Who acts, and by which call.
   *
   * @param account null for one who is not known
   * @param call id of the call; empty where the service acts of itself
   */
  public record Acting(Account account, String call) {
    private static final Acting SERVICE = new Acting(Account.SERVICE, "");
  }

  /** Where a routing context keeps the id of its call. */
  public static final String CALL = "coldround.call";

  private static final ThreadLocal<Acting> LATER = new ThreadLocal<>();

  private final Instance<SecurityIdentity> identity;
  private final CurrentVertxRequest request;
  private final Instance<SiteGrants> grants;

  @Inject
  public Caller(
      Instance<SecurityIdentity> identity,
      CurrentVertxRequest request,
      @Any Instance<SiteGrants> grants) {
    this.identity = identity;
    this.request = request;
    this.grants = grants;
  }

  /** To be handed to work that goes on when the call has been answered. */
  public Acting acting() {
    Acting later = LATER.get();
    if (later != null) {
      return later;
    }
    if (!Arc.container().requestContext().isActive()) {
      return Acting.SERVICE;
    }
    RoutingContext call = request.getCurrent();
    String id = call == null ? null : call.get(CALL);
    return new Acting(identity.get().getAttribute(ACCOUNT), id == null ? "" : id);
  }

  /** Does the work in the name of whom asked for it. */
  public void act(Acting asked, Runnable work) {
    LATER.set(asked);
    try {
      work.run();
    } finally {
      LATER.remove();
    }
  }

  /** Null for a caller who is not known. */
  public Account account() {
    return acting().account();
  }

  /** Id of the call; empty where the service acts of itself. */
  public String call() {
    return acting().call();
  }

  private boolean is(Role role) {
    Account account = account();
    return account != null && account.is(role);
  }

  public boolean isPlanner() {
    return is(Role.PLANNER);
  }

  public boolean isTechnician() {
    return is(Role.TECHNICIAN);
  }

  public boolean isCustomer() {
    return is(Role.CUSTOMER);
  }

  public boolean isScheduler() {
    return is(Role.SCHEDULER);
  }

  /** Where the pages begin for the caller. */
  public String getHome() {
    Account account = account();
    return account == null ? "/" : Home.of(account.role());
  }

  /** Tells callers apart for a page; empty where nobody is known. */
  public String getMark() {
    Account account = account();
    return account == null ? "" : account.id();
  }

  /** Code of the customer that is all there is for the caller; empty where there are all. */
  public String customer() {
    return isCustomer() ? account().customer() : "";
  }

  /** Code of the technician who calls; empty for others. */
  public String technician() {
    return isTechnician() ? account().technician() : "";
  }

  /** True where the units of a site are there for the caller. */
  public boolean reaches(String customer, String site) {
    Account account = account();
    if (account == null) {
      return false;
    }
    return switch (account.role()) {
      case PLANNER, SCHEDULER -> true;
      case CUSTOMER -> account.customer().equals(customer);
      case TECHNICIAN ->
          grants.stream().anyMatch(each -> each.grants(account.technician(), customer, site));
    };
  }
}
