package coldround.pages.edge;

import coldround.pages.Sample;
import coldround.pages.UnitReport;
import coldround.pages.UnitReports;
import io.quarkus.test.Mock;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;

@Mock
@ApplicationScoped
public class SampleReports implements UnitReports {
  @Override
  public Optional<UnitReport> report(String unitId, Instant now) {
    return unitId.equals("nowhere") ? Optional.empty() : Optional.of(Sample.report());
  }
}
