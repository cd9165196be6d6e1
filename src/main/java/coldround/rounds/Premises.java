package coldround.rounds;

import java.time.ZoneId;

/**
 * A site as the rounds see it.
 *
 * @param code "customer/site"
 * @param hours visiting hours in opening-hours syntax; empty for always
 * @param zone whose clock the hours are by
 */
public record Premises(
    String code, String name, String address, Place place, ZoneId zone, String hours) {}
