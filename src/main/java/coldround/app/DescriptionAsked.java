package coldround.app;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import org.eclipse.microprofile.openapi.OASFilter;

/**
 * Changes nothing: where something is to be filtered for each reader, the description that was made
 * at the build is written as JSON or YAML when it is asked for, and not both at each start.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.RUNTIME_PER_REQUEST)
public class DescriptionAsked implements OASFilter {}
