package coldround.app;

import io.quarkus.runtime.annotations.StaticInitSafe;
import io.smallrye.config.ConfigSourceInterceptor;
import io.smallrye.config.ConfigSourceInterceptorContext;
import io.smallrye.config.ConfigValue;
import io.smallrye.config.Priorities;
import jakarta.annotation.Priority;

/**
 * PostgreSQL's driver tells the values of a row that could not be written, secrets of web hooks
 * among them, and what it tells is logged: it is asked not to, unless the address of the database
 * says otherwise.
 */
@StaticInitSafe
@Priority(Priorities.APPLICATION)
public class QuietDriver implements ConfigSourceInterceptor {
  private static final long serialVersionUID = 1L;

  private static final String ADDRESS = "quarkus.datasource.jdbc.url";
  private static final String DRIVER = "jdbc:postgresql:";
  private static final String SETTING = "logServerErrorDetail";

  @Override
  public ConfigValue getValue(ConfigSourceInterceptorContext context, String name) {
    ConfigValue found = context.proceed(name);
    String address = found == null || !ADDRESS.equals(name) ? null : found.getValue();
    if (address == null || !address.startsWith(DRIVER) || address.contains(SETTING)) {
      return found;
    }
    String more = (address.contains("?") ? "&" : "?") + SETTING + "=false";
    return found.withValue(address + more);
  }
}
