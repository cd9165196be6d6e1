package coldround.fleet.edge;

import io.quarkus.test.junit.QuarkusMock;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Has whoever asks for the size of the fleet wait, until the end of the test at the longest. */
public final class WaitingFleetSize {

  private final CountDownLatch asked = new CountDownLatch(1);
  private final CountDownLatch told = new CountDownLatch(1);

  public WaitingFleetSize() {
    QuarkusMock.installMockForType(
        new StoredFleetSize(null) {
          @Override
          public long units(String customer) {
            asked.countDown();
            await(told);
            return 0;
          }
        },
        StoredFleetSize.class);
  }

  private static void await(CountDownLatch latch) {
    try {
      if (!latch.await(90, TimeUnit.SECONDS)) {
        throw new IllegalStateException("waited in vain");
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Until somebody waits. */
  public void untilAsked() {
    await(asked);
  }

  public void tell() {
    told.countDown();
  }
}
