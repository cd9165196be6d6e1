package coldround.rounds;

import java.time.Instant;

/**
 * What is fixed of a call: a customer has been told, or somebody is on the way or at work.
 *
 * @param technician who does it
 * @param begins when the work begins
 * @param out when the technician leaves for it or left home; later than now while nobody has left
 * @param why booked, under way or begun
 */
public record Kept(String technician, Instant begins, Instant out, String why) {}
