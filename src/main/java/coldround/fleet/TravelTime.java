package coldround.fleet;

import coldround.quantity.Quantity;

/**
 * Measured travel between two places, in that direction.
 *
 * @param from place: "customer/site" or the code of a technician
 * @param minutes driving time
 * @param distance null if unknown
 */
public record TravelTime(String from, String to, double minutes, Quantity distance) {}
