package coldround.http;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import javax.sql.DataSource;
import net.javacrumbs.shedlock.core.DefaultLockingTaskExecutor;
import net.javacrumbs.shedlock.core.LockConfiguration;
import net.javacrumbs.shedlock.core.LockingTaskExecutor;
import net.javacrumbs.shedlock.provider.jdbc.JdbcLockProvider;

/** Work that comes due on all instances at once and that the first to come does for all. */
@ApplicationScoped
public class OneInstance {

  private final LockingTaskExecutor executor;

  @Inject
  public OneInstance(DataSource store) {
    this.executor = new DefaultLockingTaskExecutor(new JdbcLockProvider(store, "shedlock"));
  }

  /**
   * Does it, unless another instance does it now or has just done it. Called without a transaction:
   * others must see the claim at once.
   *
   * @param least for how long the work counts as done, whatever the clocks of the others say
   * @param most for how long an instance that died keeps others from it
   */
  public void run(String what, Duration least, Duration most, Runnable work) {
    executor.executeWithLock(work, new LockConfiguration(Instant.now(), what, most, least));
  }
}
