'use server'
import { annotatePhoto } from '@/lib/server/commands/annotate-photo'
import { judgeLikeness } from '@/lib/server/commands/judge-likeness'
import { judgePhoto } from '@/lib/server/commands/judge-photo'
import { notePhotoDisagrees } from '@/lib/server/commands/note-photo-disagrees'
import { act } from './act'

export async function judgePhotoAction(input: unknown) {
  return act(judgePhoto, input)
}

export async function annotatePhotoAction(input: unknown) {
  return act(annotatePhoto, input)
}

export async function notePhotoDisagreesAction(input: unknown) {
  return act(notePhotoDisagrees, input)
}

export async function judgeLikenessAction(input: unknown) {
  return act(judgeLikeness, input)
}
