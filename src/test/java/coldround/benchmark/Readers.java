package coldround.benchmark;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/** Reads addresses over and over, four at a time, and says how many a second and how slowly. */
final class Readers {

  private static final int READERS = 4;
  private static final int WARM_UP = 3;
  private static final int ROUNDS = 5;

  /** Reads a second, and what 99 of 100 of them take at most. */
  record Rate(double perSecond, double p99Ms) {}

  /** Round by round, in their order. */
  record Rates(double[] perSecond, double[] p99Ms) {

    private static Rates of(List<Rate> rounds) {
      return new Rates(
          rounds.stream().mapToDouble(Rate::perSecond).toArray(),
          rounds.stream().mapToDouble(Rate::p99Ms).toArray());
    }

    Rate median() {
      return new Rate(Times.middle(perSecond), Times.middle(p99Ms));
    }
  }

  private final HttpClient http = HttpClient.newHttpClient();
  private final String token;
  private final int seconds;

  /**
   * @param seconds of a round
   */
  Readers(String token, int seconds) {
    this.token = token;
    this.seconds = seconds;
  }

  /** One read that must succeed. */
  HttpResponse<byte[]> get(URI page, String tag) throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(page).header("Authorization", "Bearer " + token);
    if (tag != null) {
      request.header("If-None-Match", tag);
    }
    HttpResponse<byte[]> answer =
        http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
    if (answer.statusCode() != (tag == null ? 200 : 304)) {
      throw new IOException(answer.statusCode() + " " + new String(answer.body()));
    }
    return answer;
  }

  /**
   * An endpoint of the same service that gives the bytes of the page from memory.
   *
   * @param endpoint of the service, there when it was built for it
   */
  URI bare(URI endpoint, URI page) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(endpoint)
            .header("Authorization", "Bearer " + token)
            .PUT(HttpRequest.BodyPublishers.ofByteArray(get(page, null).body()))
            .build();
    int status = http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
    if (status > 299) {
      throw new IllegalArgumentException(
          "no bare endpoint (" + status + "): build with mvn -q -DskipTests -Pbare package");
    }
    return endpoint;
  }

  /**
   * What is read.
   *
   * @param unchanged with the tag of what was read before, so that nothing has to be sent
   */
  record Asked(List<URI> pages, boolean unchanged) {}

  /** Several rounds, each of all in turn, after as long as a program takes to warm up. */
  List<Rates> inTurn(Asked... all) throws Exception {
    List<List<Rate>> rates = new ArrayList<>();
    for (Asked asked : all) {
      rates.add(new ArrayList<>());
      for (int round = 0; round < WARM_UP; round++) {
        round(asked.pages(), asked.unchanged());
      }
    }
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < all.length; i++) {
        rates.get(i).add(round(all[i].pages(), all[i].unchanged()));
      }
    }
    return rates.stream().map(Rates::of).toList();
  }

  /**
   * At a steady rate, whatever the answers take: the time from when each was due. Several rounds
   * after one to warm up.
   *
   * @param perSecond reads
   */
  Rates steady(List<URI> pages, double perSecond) throws Exception {
    ExecutorService readers = Executors.newFixedThreadPool(READERS * 4);
    try {
      steadyRound(readers, pages, perSecond);
      List<Rate> rates = new ArrayList<>();
      for (int round = 0; round < ROUNDS; round++) {
        rates.add(steadyRound(readers, pages, perSecond));
      }
      return Rates.of(rates);
    } finally {
      readers.shutdown();
    }
  }

  private Rate steadyRound(ExecutorService readers, List<URI> pages, double perSecond)
      throws Exception {
    List<Future<Long>> all = new ArrayList<>();
    int count = (int) (seconds * perSecond);
    long start = System.nanoTime();
    for (int n = 0; n < count; n++) {
      long due = start + (long) (n * 1e9 / perSecond);
      URI page = pages.get(n % pages.size());
      long left = due - System.nanoTime();
      if (left > 0) {
        TimeUnit.NANOSECONDS.sleep(left);
      }
      all.add(
          readers.submit(
              () -> {
                get(page, null);
                return System.nanoTime() - due;
              }));
    }
    List<Long> times = new ArrayList<>();
    for (Future<Long> each : all) {
      times.add(each.get());
    }
    return rate(times);
  }

  private Rate round(List<URI> pages, boolean unchanged) throws Exception {
    ExecutorService readers = Executors.newFixedThreadPool(READERS);
    List<Future<List<Long>>> all = new ArrayList<>();
    List<String> tags = new ArrayList<>();
    for (URI page : pages) {
      tags.add(unchanged ? get(page, null).headers().firstValue("ETag").orElseThrow() : null);
    }
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    for (int i = 0; i < READERS; i++) {
      int start = i;
      all.add(
          readers.submit(
              () -> {
                List<Long> times = new ArrayList<>();
                for (int n = start; System.nanoTime() < end; n += READERS) {
                  long begin = System.nanoTime();
                  get(pages.get(n % pages.size()), tags.get(n % pages.size()));
                  times.add(System.nanoTime() - begin);
                }
                return times;
              }));
    }
    List<Long> times = new ArrayList<>();
    for (Future<List<Long>> each : all) {
      times.addAll(each.get());
    }
    readers.shutdown();
    return rate(times);
  }

  private Rate rate(List<Long> times) {
    long[] sorted = times.stream().mapToLong(Long::longValue).sorted().toArray();
    return new Rate((double) sorted.length / seconds, sorted[(int) (sorted.length * 0.99)] / 1e6);
  }
}
