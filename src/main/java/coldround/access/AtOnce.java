package coldround.access;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;

/**
 * How many calls of one account are under way at the same time: one that sends slowly, reads slowly
 * or asks for much keeps that many busy and not all there are.
 *
 * @param <C> a call
 */
public final class AtOnce<C> {

  private final int most;
  private final Predicate<C> over;
  private final Map<String, Set<C>> open = new ConcurrentHashMap<>();

  /**
   * @param most 0 for no limit
   * @param over true for a call that has ended, though nobody said so: its connection is gone
   */
  public AtOnce(int most, Predicate<C> over) {
    this.most = most;
    this.over = over;
  }

  /** Counts a call in, which has to be counted out again; false where there are too many. */
  public boolean enter(String account, C call) {
    if (most <= 0 || counted(account, call)) {
      return true;
    }
    // asked with nothing held: a call that ends holds what it is asked about, and leaves here
    List<C> gone = calls(account).stream().filter(over).toList();
    gone.forEach(one -> leave(account, one));
    return !gone.isEmpty() && counted(account, call);
  }

  private boolean counted(String account, C call) {
    boolean[] entered = {false};
    open.compute(
        account,
        (id, known) -> {
          Set<C> calls = known == null ? new HashSet<>() : known;
          entered[0] = calls.size() < most && calls.add(call);
          return calls;
        });
    return entered[0];
  }

  private List<C> calls(String account) {
    List<C> calls = new ArrayList<>();
    open.computeIfPresent(
        account,
        (id, known) -> {
          calls.addAll(known);
          return known;
        });
    return calls;
  }

  /** Nothing happens when it was not counted, or is counted out already. */
  public void leave(String account, C call) {
    open.computeIfPresent(
        account,
        (id, calls) -> {
          calls.remove(call);
          return calls.isEmpty() ? null : calls;
        });
  }
}
