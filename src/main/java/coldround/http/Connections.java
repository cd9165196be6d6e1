package coldround.http;

import io.vertx.core.net.impl.ConnectionBase;
import io.vertx.ext.web.RoutingContext;

/** The connections that calls come by. */
public final class Connections {

  private Connections() {}

  /**
   * Whether that of a call is gone. The channel says so without a lock; the response would take
   * that of its connection, which whoever asks may hold for a connection of his own.
   */
  public static boolean isGone(RoutingContext call) {
    return !((ConnectionBase) call.request().connection()).channel().isOpen();
  }
}
