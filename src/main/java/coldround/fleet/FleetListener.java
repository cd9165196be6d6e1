package coldround.fleet;

import java.util.Collection;

/** Told, in the transaction of the change, that the history of units has changed. */
public interface FleetListener {
  void changed(Collection<String> unitIds);
}
