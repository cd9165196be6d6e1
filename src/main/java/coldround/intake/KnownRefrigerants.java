package coldround.intake;

import java.util.Collection;
import java.util.Optional;

/** Which refrigerants the rule tables know, for cells that name one. */
public interface KnownRefrigerants {

  /** The designation, such as R-404A, that a spelling means. */
  Optional<String> designation(String written);

  /** All designations. */
  Collection<String> designations();
}
