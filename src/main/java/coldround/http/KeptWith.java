package coldround.http;

/** What answers follow from that is held beside the store: once it is another, none is kept. */
public interface KeptWith {

  /** Of now; compared by equals. */
  Object held();
}
