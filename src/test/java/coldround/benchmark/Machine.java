package coldround.benchmark;

import java.lang.management.ManagementFactory;

/** What else the machine does while figures are taken. */
final class Machine {

  private Machine() {}

  /** Load average of the last minute; below 0 where the system does not tell. */
  static double load() {
    return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
  }
}
