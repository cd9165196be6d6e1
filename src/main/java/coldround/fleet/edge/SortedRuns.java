package coldround.fleet.edge;

import coldround.sheet.Scratch;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Sorted lists of visits in a file of their own, and all of them in one order again: an external
 * merge sort (Knuth, The Art of Computer Programming, volume 3, 5.4). What is in memory does not
 * grow with the visits but by the buffer of a run for each.
 */
final class SortedRuns implements AutoCloseable {

  private static final int BUFFER = 1 << 15;

  private final Comparator<VisitRow> order;
  private final FileChannel file;
  // where each run ends
  private final List<Long> ends = new ArrayList<>();

  /**
   * @param order of each run
   */
  SortedRuns(Comparator<VisitRow> order) {
    this.order = order;
    try {
      file =
          FileChannel.open(
              Scratch.file("visits", ".runs"),
              StandardOpenOption.READ,
              StandardOpenOption.WRITE,
              StandardOpenOption.DELETE_ON_CLOSE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One more run. */
  void add(List<VisitRow> sorted) {
    try {
      DataOutputStream out =
          new DataOutputStream(new BufferedOutputStream(Channels.newOutputStream(file), BUFFER));
      for (VisitRow row : sorted) {
        write(row, out);
      }
      out.flush();
      ends.add(file.position());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  long bytes() {
    return ends.isEmpty() ? 0 : ends.get(ends.size() - 1);
  }

  /** All rows of all runs in their order. */
  Iterator<VisitRow> merged() {
    Merge merge = new Merge();
    long from = 0;
    for (long end : ends) {
      merge.add(new Run(from, end));
      from = end;
    }
    return merge;
  }

  @Override
  public void close() {
    try {
      file.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(VisitRow row, DataOutputStream out) throws IOException {
    out.writeLong(row.unitId);
    out.writeLong(row.visited.toEpochDay());
    write(row.number, out);
    write(row.technician, out);
    write(row.purpose, out);
    write(row.readings, out);
    write(row.findings, out);
    write(row.work, out);
    write(row.faults, out);
    write(row.note, out);
  }

  private static void write(String text, DataOutputStream out) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  private static VisitRow read(DataInputStream in) throws IOException {
    VisitRow row = new VisitRow();
    row.unitId = in.readLong();
    row.visited = LocalDate.ofEpochDay(in.readLong());
    row.number = text(in);
    row.technician = text(in);
    row.purpose = text(in);
    row.readings = text(in);
    row.findings = text(in);
    row.work = text(in);
    row.faults = text(in);
    row.note = text(in);
    return row;
  }

  private static String text(DataInputStream in) throws IOException {
    return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
  }

  /** The smallest row of those that the runs have next. */
  private final class Merge implements Iterator<VisitRow> {
    private final PriorityQueue<Run> runs =
        new PriorityQueue<>(Comparator.comparing((Run run) -> run.next, order));

    void add(Run run) {
      if (run.next != null) {
        runs.add(run);
      }
    }

    @Override
    public boolean hasNext() {
      return !runs.isEmpty();
    }

    @Override
    public VisitRow next() {
      Run run = runs.remove();
      VisitRow row = run.next;
      run.step();
      add(run);
      return row;
    }
  }

  private final class Run {
    private final DataInputStream in;
    // null behind the last
    private VisitRow next;

    Run(long from, long end) {
      in = new DataInputStream(new BufferedInputStream(new Part(from, end), BUFFER));
      step();
    }

    void step() {
      try {
        next = in.available() > 0 ? read(in) : null;
      } catch (ClosedChannelException e) {
        // without its cause, which is that of a caller who hung up elsewhere
        throw new IllegalStateException("the transaction of these visits has ended");
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** One part of the file; several are read in turns. */
  private final class Part extends InputStream {
    private long at;
    private final long end;

    Part(long from, long end) {
      at = from;
      this.end = end;
    }

    @Override
    public int available() {
      return (int) Math.min(Integer.MAX_VALUE, end - at);
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      if (at >= end) {
        return -1;
      }
      int most = (int) Math.min(length, end - at);
      int read = file.read(ByteBuffer.wrap(into, offset, most), at);
      at += Math.max(0, read);
      return read;
    }
  }
}
