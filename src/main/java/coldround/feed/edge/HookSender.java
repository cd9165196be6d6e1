package coldround.feed.edge;

import coldround.feed.AddressBlock;
import coldround.feed.HookAddresses;
import coldround.feed.HookSecret;
import coldround.feed.HookSignature;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.Future;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpClient;
import io.vertx.core.http.HttpClientOptions;
import io.vertx.core.http.HttpClientRequest;
import io.vertx.core.http.HttpClientResponse;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.RequestOptions;
import io.vertx.core.net.SocketAddress;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.InetAddress;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;

/** Sends one message to a subscriber and says what came of it. */
@ApplicationScoped
class HookSender {

  private static final int MOST_OF_ANSWER = 64 * 1024;
  private static final int TEXT = 500;

  /**
   * What came of it.
   *
   * @param status of the answer, 0 for none
   * @param problem empty when delivered
   * @param pause that the subscriber asks for, zero for none
   */
  record Outcome(int status, String problem, Duration pause) {
    boolean delivered() {
      return problem.isEmpty();
    }

    /** 410: the subscriber is gone for good. */
    boolean gone() {
      return status == 410;
    }

    static Outcome failed(String problem) {
      String text = problem.length() > TEXT ? problem.substring(0, TEXT) : problem;
      return new Outcome(0, text, Duration.ZERO);
    }
  }

  /** An answer whose status is there, and when all of it will be. */
  private record Answer(HttpClientResponse response, Future<Void> end) {}

  private final HookAddresses addresses;
  private final HooksConfig config;
  private final ServiceAddress service;
  private final ObjectMapper json;
  private final Clock clock;
  private final HttpClient client;

  @Inject
  HookSender(
      HooksConfig config, ServiceAddress service, ObjectMapper json, Clock clock, Vertx vertx) {
    this.config = config;
    this.service = service;
    this.json = json;
    this.clock = clock;
    this.addresses =
        new HookAddresses(
            config.allowed().orElse(List.of()).stream().map(AddressBlock::parse).toList());
    this.client =
        vertx.createHttpClient(
            new HttpClientOptions()
                .setConnectTimeout((int) config.connectLimit().toMillis())
                .setKeepAliveTimeout(30)
                // of a host and port, which all subscriptions may share; each sends one at a time
                .setMaxPoolSize(config.most())
                .setTcpNoDelay(true));
  }

  /** What is wrong with a URL now; empty for nothing. */
  Optional<String> fault(URI url) {
    Optional<String> fault = HookAddresses.fault(url);
    if (fault.isPresent()) {
      return fault;
    }
    try {
      addresses.resolve(url);
      return Optional.empty();
    } catch (HookAddresses.Refused e) {
      return Optional.of("cannot be used: " + e.getMessage());
    }
  }

  /**
   * @param tries that have failed: another address of the host is taken each time
   */
  Outcome send(URI url, List<HookSecret> secrets, FeedEvent event, int tries)
      throws InterruptedException {
    InetAddress to;
    try {
      List<InetAddress> all = addresses.resolve(url);
      to = all.get(tries % all.size());
    } catch (HookAddresses.Refused e) {
      return Outcome.failed(e.getMessage());
    }
    byte[] body = body(event);
    String id = event.id();
    long seconds = clock.instant().getEpochSecond();
    RequestOptions options = options(url, to);
    options.putHeader("content-type", CloudEvent.MEDIA_TYPE + "; charset=utf-8");
    options.putHeader("user-agent", "coldround");
    options.putHeader("webhook-id", id);
    options.putHeader("webhook-timestamp", Long.toString(seconds));
    options.putHeader("webhook-signature", HookSignature.header(secrets, id, seconds, body));
    return exchange(options, Buffer.buffer(body));
  }

  private byte[] body(FeedEvent event) {
    try {
      return json.writeValueAsBytes(CloudEvent.of(event, service.address()));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** To the address that was checked, whatever the name leads to meanwhile. */
  private static RequestOptions options(URI url, InetAddress to) {
    boolean safe = "https".equalsIgnoreCase(url.getScheme());
    int usual = safe ? 443 : 80;
    int port = url.getPort() < 0 ? usual : url.getPort();
    String path = url.getRawPath() == null || url.getRawPath().isEmpty() ? "/" : url.getRawPath();
    return new RequestOptions()
        .setMethod(HttpMethod.POST)
        .setServer(SocketAddress.inetSocketAddress(port, to.getHostAddress()))
        .setHost(url.getHost())
        .setPort(port)
        .setSsl(safe)
        .setURI(url.getRawQuery() == null ? path : path + "?" + url.getRawQuery())
        // an answer that leads elsewhere is none: where it leads was not checked
        .setFollowRedirects(false);
  }

  private Outcome exchange(RequestOptions options, Buffer body) throws InterruptedException {
    long end = System.nanoTime() + config.answerLimit().toNanos();
    Giving giving = new Giving();
    Future<Answer> answer =
        client
            .request(options)
            .compose(
                request ->
                    giving.mayGo(request)
                        ? request.send(body).map(HookSender::readLittle)
                        : Future.failedFuture("given up"));
    try {
      Answer given =
          answer.toCompletionStage().toCompletableFuture().get(left(end), TimeUnit.NANOSECONDS);
      finish(given, end);
      return outcome(given.response());
    } catch (TimeoutException e) {
      giving.up();
      return Outcome.failed("no answer within " + config.answerLimit().toMillis() + " ms");
    } catch (ExecutionException e) {
      Throwable cause = e.getCause();
      return Outcome.failed(
          "no connection or no answer: "
              + (cause.getMessage() == null
                  ? cause.getClass().getSimpleName()
                  : cause.getMessage()));
    }
  }

  /** A message that is given up must not go out later: it would come twice when tried again. */
  private static final class Giving {
    private final AtomicReference<HttpClientRequest> open = new AtomicReference<>();
    private final AtomicBoolean over = new AtomicBoolean();

    boolean mayGo(HttpClientRequest request) {
      open.set(request);
      if (over.get()) {
        request.reset();
      }
      return !over.get();
    }

    void up() {
      over.set(true);
      HttpClientRequest request = open.get();
      if (request != null) {
        request.reset();
      }
    }
  }

  /** What the answer says beside its status is not wanted. */
  private static Answer readLittle(HttpClientResponse response) {
    AtomicLong read = new AtomicLong();
    response.handler(
        part -> {
          if (read.addAndGet(part.length()) > MOST_OF_ANSWER) {
            response.request().connection().close();
          }
        });
    return new Answer(response, response.end());
  }

  /** The connection serves again once the answer has been read; a slow one is closed instead. */
  private static void finish(Answer answer, long end) throws InterruptedException {
    try {
      answer.end().toCompletionStage().toCompletableFuture().get(left(end), TimeUnit.NANOSECONDS);
    } catch (TimeoutException | ExecutionException e) {
      answer.response().request().connection().close();
    }
  }

  private static long left(long end) {
    return Math.max(1, end - System.nanoTime());
  }

  private Outcome outcome(HttpClientResponse response) {
    int status = response.statusCode();
    boolean delivered = status >= 200 && status < 300;
    return new Outcome(
        status,
        delivered ? "" : "answered with status " + status,
        delivered ? Duration.ZERO : asked(response.getHeader("Retry-After")));
  }

  private static Duration asked(String retryAfter) {
    return Stream.ofNullable(retryAfter)
        .filter(text -> text.matches("\\d{1,9}"))
        .map(text -> Duration.ofSeconds(Long.parseLong(text)))
        .findFirst()
        .orElse(Duration.ZERO);
  }

  @PreDestroy
  void close() {
    client.close();
  }
}
