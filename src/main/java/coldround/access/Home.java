package coldround.access;

/** Where the pages begin for a role. */
public final class Home {

  private Home() {}

  /** Address within the service. */
  public static String of(Role role) {
    return switch (role) {
      case PLANNER, CUSTOMER -> "/";
      case TECHNICIAN -> "/rounds";
      case SCHEDULER -> "/upkeep";
    };
  }
}
