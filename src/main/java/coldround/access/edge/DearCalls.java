package coldround.access.edge;

import coldround.access.Account;
import coldround.http.Caller;
import coldround.http.Dear;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.core.CurrentRequestManager;

/** Few calls that cost much at once, so that one who makes many leaves room for the others. */
@ApplicationScoped
class DearCalls {

  private final Doorkeeper door;
  private final Caller caller;

  @Inject
  DearCalls(Doorkeeper door, Caller caller) {
    this.door = door;
    this.caller = caller;
  }

  @Dear
  @ServerRequestFilter
  void count(RoutingContext context) {
    Account account = caller.account();
    if (account != null) {
      door.tooDear(account, new DearCall(context, CurrentRequestManager.get()))
          .ifPresent(
              refusal -> {
                throw refusal;
              });
    }
  }
}
