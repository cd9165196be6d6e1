package coldround.access;

/**
 * The book of who changed what. An entry is written in the transaction of the change: it is there
 * if and only if the change is.
 */
public interface Audit {

  /**
   * What was changed.
   *
   * @param kind of object, such as booking
   * @param id of the object
   * @param action such as made, changed, cancelled
   * @param customer code of the one whose equipment it is about; empty for nobody or several
   * @param was in short; empty where there was nothing, never a secret
   * @param became in short; empty where there is nothing any more, never a secret
   */
  record Change(String kind, String id, String action, String customer, String was, String became) {

    /** Of nobody's equipment in particular. */
    public static Change of(String kind, String id, String action, String was, String became) {
      return new Change(kind, id, action, "", was, became);
    }
  }

  /** By the one who calls. The caller holds the transaction. */
  void note(Change change);

  /** The same about a unit, whose customer is looked up. */
  void noteOfUnit(String unitId, String kind, String id, String action, String was, String became);
}
