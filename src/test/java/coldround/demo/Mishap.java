package coldround.demo;

import java.time.LocalDate;

/** A row of the fault list. */
record Mishap(
    Plant plant, LocalDate day, Trouble trouble, LocalDate repaired, double stockLostUsd) {}
