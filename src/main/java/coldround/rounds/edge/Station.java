package coldround.rounds.edge;

/**
 * Where somebody's day starts or ends.
 *
 * @param place "customer/site" or the code of a technician; null for coordinates
 */
record Station(String place, Double latitude, Double longitude) {}
