import { ISSUE_DOSSIER_TASK } from '@/lib/server/commands/issue-dossier'
import { issueDossierTask } from '@/lib/server/dossier/issue-dossier-task'
import type { TaskTable } from './task'

/** Every kind of long work, by the name under which it is queued. */
export const taskTable: TaskTable = { [ISSUE_DOSSIER_TASK]: issueDossierTask }
