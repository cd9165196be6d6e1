package coldround.feed;

import java.util.Collection;

/** Takes changes in the transaction that makes them: they are told if it commits, and only then. */
public interface Outbox {
  void add(Collection<Change> changes);
}
