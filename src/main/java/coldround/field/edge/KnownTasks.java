package coldround.field.edge;

import coldround.http.Problem;
import coldround.upkeep.TaskAnswers;
import coldround.upkeep.TaskAnswers.Known;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Tasks that the outside names. */
@ApplicationScoped
class KnownTasks {

  private final TaskAnswers tasks;
  private final UnitLock units;

  @Inject
  KnownTasks(TaskAnswers tasks, UnitLock units) {
    this.tasks = tasks;
    this.units = units;
  }

  @Transactional
  Known read(String taskId) {
    return tasks.known(taskId).orElseThrow(() -> unknown(taskId));
  }

  private static Problem unknown(String taskId) {
    return Problem.notFound("task '" + taskId + "'");
  }

  /** To be changed: nobody else changes it or its unit before the transaction ends. */
  @Transactional(Transactional.TxType.MANDATORY)
  Known locked(String taskId) {
    // nothing else is read before: it would be believed though another call changed it meanwhile
    units.lock(tasks.unit(taskId).orElseThrow(() -> unknown(taskId)));
    return read(taskId);
  }
}
