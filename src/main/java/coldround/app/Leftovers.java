package coldround.app;

import coldround.sheet.Scratch;
import io.quarkus.logging.Log;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Clears away the files that a killed service was working with, before any of ours is made. */
@ApplicationScoped
class Leftovers {

  void atStart(@Observes @Priority(1) StartupEvent start) {
    Path folder = Path.of(System.getProperty("java.io.tmpdir"));
    try {
      List<String> deleted = Scratch.clear(folder);
      if (!deleted.isEmpty()) {
        Log.infof("cleared away what a service that ended left in %s: %s", folder, deleted);
      }
    } catch (IOException e) {
      // they cost room and nothing else
      Log.warnf("cannot clear away old files in %s: %s", folder, e);
    }
  }
}
