package coldround.intake.edge;

import coldround.intake.Mending.Choice;
import coldround.intake.Profile;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Tries what a file would come to, and takes it; a small one is waited for. */
@ApplicationScoped
class Trials {

  /** A small file is answered with its trial; a bigger one with how far the trial is. */
  private static final int WAIT_SECONDS = 2;

  private final ImportRuns runs;

  @Inject
  Trials(ImportRuns runs) {
    this.runs = runs;
  }

  void tryOut(HeldFile file, Profile profile, List<Choice> choices, String saved) {
    FileImport.Order order = new FileImport.Order(file.kind(), profile, true, true, "");
    ImportRuns.Later trial = runs.later(file.file().borrowed(), order);
    file.tried(new HeldFile.Trial(profile, choices, trial.open().begun().id(), saved));
    await(trial);
  }

  /** Takes the file as it was tried; pressed twice it is taken once. */
  String take(HeldFile file) {
    synchronized (file) {
      if (file.taken().isEmpty()) {
        FileImport.Order order =
            new FileImport.Order(file.kind(), file.trial().profile(), false, true, "");
        ImportRuns.Later later = runs.later(file.file(), order);
        file.takenBy(later.open().begun().id());
        await(later);
      }
      return file.taken();
    }
  }

  private static void await(ImportRuns.Later later) {
    try {
      later.receipt().get(WAIT_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException | ExecutionException e) {
      // the page that follows tells how far it is, or why it failed
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Why a run failed. */
  String failed(String run) {
    return String.valueOf(runs.ended(run).problem().get("detail"));
  }
}
