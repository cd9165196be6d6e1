package coldround.access.edge;

import coldround.http.Connections;
import io.vertx.ext.web.RoutingContext;
import org.jboss.resteasy.reactive.common.core.ResteasyReactiveCallbackContext;

/**
 * A call that costs much. It is over when its work has ended, which goes on when its caller hangs
 * up, and its answer has been sent or cannot be any more.
 */
final class DearCall {

  private final RoutingContext call;
  private final ResteasyReactiveCallbackContext work;
  private volatile boolean worked;
  private volatile boolean answered;

  /**
   * @param work tells when no thread works for the call any more
   */
  DearCall(RoutingContext call, ResteasyReactiveCallbackContext work) {
    this.call = call;
    this.work = work;
  }

  boolean isOver() {
    return worked && (answered || Connections.isGone(call));
  }

  /**
   * @param leave happens at least once; not where the connection was gone before anybody could be
   *     told, which isOver says
   */
  void whenOver(Runnable leave) {
    work.registerCompletionCallback(
        fault -> {
          worked = true;
          if (isOver()) {
            leave.run();
          }
        });
    call.addEndHandler(
        ended -> {
          answered = true;
          // who has the whole answer may call again at once, though the thread that worked for it
          // has not come to its end yet; who hangs up ends nothing
          if (call.response().ended()) {
            worked = true;
          }
          if (isOver()) {
            leave.run();
          }
        });
  }
}
