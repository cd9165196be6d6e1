package coldround.app;

import coldround.store.Embedded;
import io.agroal.api.AgroalDataSource;
import io.agroal.api.AgroalPoolInterceptor;
import io.quarkus.logging.Log;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.lang.ref.WeakReference;
import java.sql.Connection;
import java.sql.SQLException;
import org.h2.engine.Database;

/**
 * A write that fails closes the embedded database, and all connections to it are of no use any
 * more, though each tells so only when it is used. The first of them that comes back to the pool
 * takes the others along, a moment later, else each would fail one more call when there is room
 * again.
 */
@ApplicationScoped
class LostConnections implements AgroalPoolInterceptor {

  // the pool is made with this interceptor, so it is there only later
  private final Instance<AgroalDataSource> pool;
  private WeakReference<Database> left = new WeakReference<>(null);

  @Inject
  LostConnections(Instance<AgroalDataSource> pool) {
    this.pool = pool;
  }

  @Override
  public void onConnectionReturn(Connection connection) {
    try {
      // what is closed already the pool finds out by itself
      if (!connection.isClosed()) {
        Embedded.behind(connection).filter(Embedded::isLost).ifPresent(this::leave);
      }
    } catch (SQLException | RuntimeException e) {
      // thrown on, the connection would never come back
      Log.warnf("a connection does not tell whether it can be used again: %s", e);
    }
  }

  private synchronized void leave(Embedded lost) {
    if (left.get() != lost.database()) {
      left = new WeakReference<>(lost.database());
      lost.end();
      pool.get().flush(AgroalDataSource.FlushMode.GRACEFUL);
    }
  }
}
