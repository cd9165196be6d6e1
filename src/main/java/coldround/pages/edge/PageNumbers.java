package coldround.pages.edge;

import coldround.pages.ReaderNumbers;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Pages show numbers as the language of the browser writes them; answers to programs never do. */
class PageNumbers {

  @ServerResponseFilter
  void write(ContainerRequestContext request, ContainerResponseContext response) {
    MediaType type = response.getMediaType();
    boolean page = type != null && MediaType.TEXT_HTML_TYPE.isCompatible(type);
    if (!page || request.getUriInfo().getPath().startsWith("/api/")) {
      return;
    }
    response.getHeaders().add(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE);
    ReaderNumbers numbers =
        ReaderNumbers.of(ReaderNumbers.language(request.getAcceptableLanguages()));
    if (response.getEntity() instanceof String html) {
      String written = numbers.page(html);
      // for what a page works out by itself
      String told = "<html data-decimal=\"" + numbers.decimal() + "\"";
      response.setEntity(numbers.plain() ? written : written.replaceFirst("<html", told));
    }
  }
}
