package coldround.intake.edge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Files that were looked at on the page and may be taken: the last few, for a while. */
@ApplicationScoped
class HeldFiles {

  private static final int MOST = 20;
  private static final Duration LONGEST = Duration.ofHours(2);

  private final Map<String, HeldFile> files = new ConcurrentHashMap<>();
  private final Clock clock;

  @Inject
  HeldFiles(Clock clock) {
    this.clock = clock;
  }

  void hold(HeldFile file) {
    files.values().stream().filter(this::isOld).toList().forEach(this::drop);
    while (files.size() >= MOST) {
      files.values().stream().min(Comparator.comparing(HeldFile::since)).ifPresent(this::drop);
    }
    files.put(file.id(), file);
  }

  private boolean isOld(HeldFile file) {
    return file.since().plus(LONGEST).isBefore(clock.instant());
  }

  private void drop(HeldFile file) {
    synchronized (file) {
      files.remove(file.id());
      if (file.taken().isEmpty()) {
        file.file().close();
      }
    }
  }

  Optional<HeldFile> find(String id) {
    return Optional.ofNullable(files.get(id));
  }
}
