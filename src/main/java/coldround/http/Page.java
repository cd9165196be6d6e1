package coldround.http;

import java.util.List;

/**
 * One page of a list.
 *
 * @param next opaque cursor of the following page, null on the last
 */
public record Page<T>(List<T> items, String next) {}
