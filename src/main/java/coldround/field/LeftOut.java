package coldround.field;

import coldround.reason.Reason;

/**
 * A reading that was kept but could not be judged.
 *
 * @param part which one, where there are several; empty otherwise
 */
public record LeftOut(String quantity, String part, Reason reason) {}
