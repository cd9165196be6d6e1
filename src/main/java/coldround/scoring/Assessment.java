package coldround.scoring;

import coldround.fleet.UnitHistory;
import java.time.LocalDate;

/**
 * A unit's score on a day together with the states it was computed from, for whoever builds on
 * them.
 *
 * @param history what was knowable on that day
 */
public record Assessment(
    UnitHistory history,
    LocalDate asOf,
    Condition condition,
    AgeState age,
    SupplyState supply,
    CoilState coil,
    TripState trip,
    FaultState faults,
    ElectricalState electrical,
    EvaporatorState evaporator,
    LeakState leak) {}
