package coldround.replacement.budget;

/**
 * What the limits of a problem lack, and the plan that lacks least.
 *
 * @param missing by how much each year's limit would have to be raised, at least and in all; all
 *     zero when a plan exists
 * @param chosen number of the option of each unit in the plan that could be had then
 */
public record Shortfall(double[] missing, int[] chosen) {}
