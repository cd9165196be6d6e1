package coldround.replacement;

/** A unit whose replacement has no price, neither in the equipment list nor in the cost table. */
public final class NoPrice extends RuntimeException {

  private final transient String unitId;

  NoPrice(String unitId, String message) {
    super(message);
    this.unitId = unitId;
  }

  public String unitId() {
    return unitId;
  }
}
