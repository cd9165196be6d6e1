package coldround.http;

import coldround.access.Account;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Answers to reads that are {@link Kept}, given again as long as nothing has been written since
 * they were worked out: who reads what nobody has changed need not wait for it to be worked out.
 * They are never stale, for the state of the store is part of what they are kept under.
 */
@ApplicationScoped
class KeptAnswers {

  private static final long MOST_BYTES = 16L << 20;

  /** Days begin at full quarters of an hour everywhere. */
  private static final long QUARTER_S = Duration.ofMinutes(15).toSeconds();

  // of a call while it is answered
  private static final String ASKED = "coldround.kept.asked";
  private static final String SEEN = "coldround.kept.seen";
  private static final String TO_KEEP = "coldround.kept";
  private static final String HEADERS = "coldround.kept.headers";

  /** What a caller asks for, and who it is. */
  private record Asked(Account account, URI address, List<String> accepted) {}

  /**
   * What an answer follows from.
   *
   * @param quarter of an hour, since some days begin then
   */
  private record Key(String state, List<Object> held, long quarter, Asked asked) {}

  /**
   * An answer.
   *
   * @param body null where only its tag is known, which the caller had already
   * @param headers that the resource has set
   */
  private record Answer(byte[] body, Map<String, List<Object>> headers) {
    int weight() {
      return 500 + (body == null ? 0 : body.length);
    }
  }

  private final StoreState store;
  private final Instance<KeptWith> beside;
  private final Caller caller;
  private final Clock clock;
  private final Cache<Key, Answer> answers =
      Caffeine.newBuilder()
          .maximumWeight(MOST_BYTES)
          .<Key, Answer>weigher((key, answer) -> answer.weight())
          .recordStats()
          .build();

  @Inject
  KeptAnswers(StoreState store, @Any Instance<KeptWith> beside, Caller caller, Clock clock) {
    this.store = store;
    this.beside = beside;
    this.caller = caller;
    this.clock = clock;
  }

  /**
   * No worker is woken for it, and no filter is asked that may wait: the same caller was let
   * through to the same answer in the same state of the store. Who calls is known to this thread
   * alone, not to the one that has asked for the state.
   */
  @Kept
  @ServerRequestFilter(nonBlocking = true, priority = Priorities.HEADER_DECORATOR)
  Uni<Response> give(ContainerRequestContext request) {
    if (!request.getMethod().equals(HttpMethod.GET)) {
      return Uni.createFrom().nullItem();
    }
    Asked asked =
        new Asked(
            caller.account(),
            request.getUriInfo().getRequestUri(),
            List.of(
                header(request, HttpHeaders.ACCEPT), header(request, HttpHeaders.ACCEPT_LANGUAGE)));
    request.setProperty(ASKED, asked);
    return Uni.createFrom().completionStage(store::soon).map(state -> given(state, asked, request));
  }

  /** Null where it must be worked out. */
  private Response given(Optional<String> state, Asked asked, ContainerRequestContext request) {
    request.setProperty(SEEN, state);
    Answer known = state.map(s -> answers.getIfPresent(key(s, asked))).orElse(null);
    return known == null ? null : response(known, request);
  }

  private Key key(String state, Asked asked) {
    return new Key(
        state,
        beside.stream().map(KeptWith::held).toList(),
        clock.instant().getEpochSecond() / QUARTER_S,
        asked);
  }

  // behind all filters that narrow a call or refuse it
  @Kept
  @ServerRequestFilter(priority = Priorities.USER + 1000)
  @SuppressWarnings("unchecked")
  void toBeKept(ContainerRequestContext request) {
    if (request.getProperty(ASKED) instanceof Asked asked) {
      var seen = (Optional<String>) request.getProperty(SEEN);
      store.settled(seen).ifPresent(state -> request.setProperty(TO_KEEP, key(state, asked)));
    }
  }

  private static String header(ContainerRequestContext request, String name) {
    String value = request.getHeaderString(name);
    return value == null ? "" : value;
  }

  /** Null where the body is asked for and not known. */
  private static Response response(Answer answer, ContainerRequestContext request) {
    Object tag = answer.headers().getOrDefault(HttpHeaders.ETAG, List.of("")).get(0);
    Response.ResponseBuilder response =
        tag instanceof EntityTag known ? request.getRequest().evaluatePreconditions(known) : null;
    if (response == null && answer.body() == null) {
      return null;
    }
    Response.ResponseBuilder told = response == null ? Response.ok(answer.body()) : response;
    answer.headers().forEach((name, values) -> values.forEach(v -> told.header(name, v)));
    return tag instanceof EntityTag known ? told.tag(known).build() : told.build();
  }

  // before the filters that add headers to whatever is answered: they will do so again
  @Kept
  @ServerResponseFilter(priority = Priorities.USER + 1000)
  void headers(ContainerRequestContext request, ContainerResponseContext response) {
    request.setProperty(HEADERS, copy(response.getHeaders()));
  }

  // behind the filters that write numbers as the reader does
  @Kept
  @ServerResponseFilter(priority = Priorities.USER - 1000)
  @SuppressWarnings("unchecked")
  void keep(ContainerRequestContext request, ContainerResponseContext response) {
    if (!(request.getProperty(TO_KEEP) instanceof Key key)
        || !store.now().map(state -> key(state, key.asked())).equals(Optional.of(key))) {
      return;
    }
    var headers = (Map<String, List<Object>>) request.getProperty(HEADERS);
    byte[] body = bytes(response.getEntity());
    if (response.getStatus() == 200 && body != null) {
      answers.put(key, new Answer(body, headers));
    } else if (response.getStatus() == 304) {
      answers.asMap().putIfAbsent(key, new Answer(null, headers));
    }
  }

  private static Map<String, List<Object>> copy(Map<String, List<Object>> headers) {
    return headers.entrySet().stream()
        .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, e -> List.copyOf(e.getValue())));
  }

  private static byte[] bytes(Object entity) {
    if (entity instanceof byte[] bytes) {
      return bytes;
    }
    return entity instanceof String text ? text.getBytes(StandardCharsets.UTF_8) : null;
  }

  /** How many answers were there already, since the start. */
  long given() {
    return answers.stats().hitCount();
  }
}
